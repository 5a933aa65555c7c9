// Writes sun.csv: times of the sun over random places and days, worked out by an
// astronomical library of its own design (astronomy-engine 2.1.19, npm), for
// comparison. Run it where that library is installed:
//
//   node sun.mjs > sun.csv
//
// Columns: latitude, longitude, hours ahead of UTC, year, month, day, event,
// seconds since the day's midnight.
import * as A from "astronomy-engine";

let state = 31;
const random = (a, b) => {
  state = (state * 1664525 + 1013904223) % 4294967296;
  return a + ((b - a) * state) / 4294967296;
};

for (let i = 0; i < 120; i++) {
  const lat = +random(-62, 62).toFixed(4), lon = +random(-180, 180).toFixed(4);
  const zone = Math.round(lon / 15);
  const y = Math.floor(random(1990, 2050)), m = Math.floor(random(1, 13)), d = Math.floor(random(1, 29));
  const base = Date.UTC(y, m - 1, d) - zone * 3600e3;
  const noon = base + (12 + zone - lon / 15) * 3600e3;
  const at = new A.Observer(lat, lon, 0);
  const say = (name, found, from) => {
    if (!found) return;
    const t = found.date.getTime();
    if (Math.abs(t - noon) > 11.5 * 3600e3) return; // the other night's
    console.log([lat, lon, zone, y, m, d, name, ((t - base) / 1000).toFixed(1)].join(","));
  };
  const before = new Date(noon - 12 * 3600e3), after = new Date(noon);
  say("rise", A.SearchRiseSet(A.Body.Sun, at, +1, before, 0.5));
  say("set", A.SearchRiseSet(A.Body.Sun, at, -1, after, 0.5));
  say("civil-rise", A.SearchAltitude(A.Body.Sun, at, +1, before, 0.5, -6));
  say("civil-set", A.SearchAltitude(A.Body.Sun, at, -1, after, 0.5, -6));
  say("nautical-set", A.SearchAltitude(A.Body.Sun, at, -1, after, 0.5, -12));
  say("golden-set", A.SearchAltitude(A.Body.Sun, at, -1, after, 0.5, 6));
}
