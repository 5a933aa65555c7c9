-- A session of an editor's own client with the server named by $SERVER, in the
-- folder it runs in. What it heard is written to said.txt; a failure ends the
-- editor with an error.
local said = {}
local function say(text) table.insert(said, text) end

local function finish(code)
  vim.fn.writefile(said, 'said.txt')
  vim.cmd(code == 0 and 'qall!' or 'cquit 1')
end

local function session()
  vim.cmd('edit main.take')
  local buf = vim.api.nvim_get_current_buf()
  local id = vim.lsp.start_client({
    name = 'longhand',
    cmd = { os.getenv('SERVER') },
    root_dir = vim.fn.getcwd(),
    workspace_folders = { { uri = vim.uri_from_fname(vim.fn.getcwd()), name = 'plans' } },
  })
  assert(id, 'the server does not start')
  vim.lsp.buf_attach_client(buf, id)
  local client = vim.lsp.get_client_by_id(id)
  assert(vim.wait(120000, function() return client.initialized end), 'the server is not ready')

  local function found(code)
    for _, d in ipairs(vim.diagnostic.get(buf)) do
      if d.code == code or (d.user_data and d.user_data.lsp and d.user_data.lsp.code == code) then return d end
    end
  end
  local function ask(method, params)
    local r = client.request_sync(method, params, 20000, buf)
    assert(r and not r.err, method .. ': ' .. vim.inspect(r))
    return r.result
  end
  local function at(line, column)
    return { textDocument = { uri = vim.uri_from_bufnr(buf) }, position = { line = line, character = column } }
  end

  local lines = {
    'take "Late é 中 😀"', '  use "people.take"', 'beat "In"',
    '  mina   wlks from M1 to M2 at 1.2m/s',
  }
  for i, l in ipairs(lines) do
    for n = 1, vim.fn.strchars(l) do
      vim.api.nvim_buf_set_lines(buf, i - 1, -1, false, { vim.fn.strcharpart(l, 0, n) })
    end
    ask('textDocument/completion', at(i - 1, #l))
  end
  assert(vim.wait(120000, function() return found('unknown-word') end), 'the slip is not found: ' .. vim.inspect(vim.diagnostic.get(buf)))
  say('unknown-word')

  local params = at(3, 9)
  params.range = { start = params.position, ['end'] = params.position }
  params.context = { diagnostics = {} }
  local actions = ask('textDocument/codeAction', params)
  vim.lsp.util.apply_workspace_edit(actions[1].edit, client.offset_encoding)
  assert(vim.wait(120000, function() return not found('unknown-word') end), 'the slip is found still')
  say('mended: ' .. (found('unknown-word') and 1 or 0))

  for _, item in ipairs(ask('textDocument/completion', at(3, 9)).items) do say(item.label) end
  local line = vim.api.nvim_buf_get_lines(buf, 3, 4, false)[1]
  local hover = ask('textDocument/hover', at(3, line:find('M2') - 1))
  say('hover: ' .. hover.contents.value:gsub('^.*```\n\n', ''):gsub('\n.*', ''))

  local rename = at(3, line:find('M1') - 1)
  rename.newName = 'sill'
  vim.lsp.util.apply_workspace_edit(ask('textDocument/rename', rename), client.offset_encoding)
  local edits = ask('textDocument/formatting', { textDocument = at(0, 0).textDocument, options = { tabSize = 2, insertSpaces = true } })
  vim.lsp.util.apply_text_edits(edits, buf, client.offset_encoding)
  vim.cmd('wall')
  client.stop()
  assert(vim.wait(120000, function() return client.is_stopped() end), 'the server does not stop')
end

local ok, err = pcall(session)
if not ok then
  say(tostring(err))
  io.stderr:write(tostring(err) .. '\n')
end
finish(ok and 0 or 1)
