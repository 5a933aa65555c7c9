// Writes labels.csv: drop-frame labels of frames all over a day, worked out by a
// timecode library of its own design (smpte-timecode 1.3.6, npm), for
// comparison. Run it where that library is installed:
//
//   node labels.mjs > labels.csv
//
// Columns: frame rate, frame, label.
import Timecode from "smpte-timecode";

let state = 31;
const random = (n) => {
  state = (state * 1664525 + 1013904223) % 4294967296;
  return Math.floor((n * state) / 4294967296);
};
for (const [rate, day] of [[29.97, 2589408], [59.94, 5178816]])
  for (let i = 0; i < 150; i++) {
    // Half of them near the minute, where labels are skipped.
    const minute = Math.round((random(1440) * 60 * 1000 * rate) / 1000);
    const frame = i % 2 ? random(day) : Math.min(day - 1, Math.max(0, minute + random(13) - 6));
    console.log([rate, frame, new Timecode(frame, rate, true).toString()].join(","));
  }
