-- What a person does in Neovim, and whether it came to what it should: a line for each. Started by neovim.mjs
-- in a house, with the configuration of the page. Written for 0.7, and kept to what 0.10 still has.

local failed = 0

local function quit()
  vim.cmd(failed > 0 and "cquit 1" or "qall!")
end

-- Neovim without a window waits for ever for somebody to read its error.
vim.defer_fn(function()
  io.stdout:write("failed: the checks end within a minute and a half\n")
  failed = failed + 1
  quit()
end, 90000)

local function check(what, run)
  local fine, why = pcall(run)
  failed = failed + (fine and 0 or 1)
  io.stdout:write(fine and ("passed: " .. what .. "\n") or ("failed: " .. what .. ": " .. vim.inspect(why):gsub("%s+", " ") .. "\n"))
end

-- The first answer that is neither nil nor false; an error with what there was at last.
local function await(what, answer, shown)
  local found
  vim.wait(15000, function()
    found = answer()
    return found
  end, 20)
  return found or error(what .. " did not come" .. (shown and ("; there was " .. vim.inspect(shown())) or ""), 0)
end

local function lines(buffer)
  return vim.api.nvim_buf_get_lines(buffer or 0, 0, -1, false)
end

local function edit(name)
  vim.cmd("edit! neovim/" .. name)
  return vim.api.nvim_get_current_buf()
end

-- The cursor on the first place of a text, as a person would put it.
local function go(text)
  vim.cmd("normal! gg0")
  assert(vim.fn.search("\\V" .. text, "cW") > 0, text .. " is not in the text")
end

local function codes(buffer)
  return vim.tbl_map(function(one) return one.code end, vim.diagnostic.get(buffer))
end

local function finding(buffer, code)
  return await("the finding " .. code, function()
    for _, one in ipairs(vim.diagnostic.get(buffer)) do
      if one.code == code then return one end
    end
  end, function() return codes(buffer) end)
end

local function without(buffer, code)
  await("an end of " .. code, function() return not vim.tbl_contains(codes(buffer), code) end, function() return codes(buffer) end)
end

local function client_of(buffer)
  return await("a client", function()
    local clients = vim.lsp.get_active_clients()
    return clients[1] and vim.lsp.buf_is_attached(buffer, clients[1].id) and clients[1]
  end)
end

local function eq(found, expected)
  if not vim.deep_equal(found, expected) then error(vim.inspect(found) .. " is not " .. vim.inspect(expected), 0) end
end

-- How often the server asked for settings, and what it had to say.
local asked, said = 0, {}
local answer = vim.lsp.handlers["workspace/configuration"]
vim.lsp.handlers["workspace/configuration"] = function(...)
  asked = asked + 1
  return answer(...)
end
for _, method in ipairs({ "window/showMessage", "window/showMessageRequest" }) do
  vim.lsp.handlers[method] = function(_, message)
    table.insert(said, method .. ": " .. message.message)
    return vim.NIL
  end
end

local card

check("a .drink file is of the language, and the server is attached", function()
  card = edit("card.drink")
  eq(vim.bo.filetype, "mutchkin")
  eq(client_of(card).name, "mutchkin")
end)

check("a finding arrives in its words, where the word stands", function()
  local found = finding(card, "unknown-ingredient")
  assert(found.message:find("“lemon juce” is in neither the house nor the larder", 1, true), found.message)
  assert(found.message:find("“lemon juice”", 1, true), found.message)
  eq({ found.lnum, found.col, found.end_lnum, found.end_col }, { 5, 8, 5, 18 })
end)

check("the settings were asked for, and turned a rule off", function()
  assert(asked > 0, "workspace/configuration was not asked for")
  without(card, "missing-garnish")
end)

check("go to definition opens the other file", function()
  go("slip rum")
  vim.lsp.buf.definition()
  await("the other file", function() return vim.api.nvim_buf_get_name(0):match("rum%.drink$") end)
  eq(vim.api.nvim_win_get_cursor(0), { 1, 6 })
end)

check("rename changes both files", function()
  edit("card.drink")
  go("slip rum")
  vim.lsp.buf.rename("ferry rum")
  await("the new name", function() return lines(card)[5]:find("ferry rum", 1, true) end, function() return lines(card) end)
  eq(lines(vim.fn.bufnr("neovim/rum.drink"))[1], "stock ferry rum")
end)

check("formatting changes the text", function()
  if vim.lsp.buf.format then
    vim.lsp.buf.format({ timeout_ms = 15000 })
  else
    vim.lsp.buf.formatting_sync(nil, 15000)
  end
  eq(lines(card)[5], "  60 ml ferry rum")
end)

check("a fix is offered and put in", function()
  go("lemon juce")
  local offered
  vim.ui.select = function(actions, options, choose)
    offered = vim.tbl_map(options.format_item or tostring, actions)
    for index, action in ipairs(actions) do
      if offered[index]:find("Change to “lemon juice”", 1, true) then return choose(action, index) end
    end
  end
  vim.lsp.buf.code_action()
  await("the fix", function() return lines(card)[6] == "  25 ml lemon juice # é 🍋" end, function() return { lines(card)[6], offered } end)
  without(card, "unknown-ingredient")
end)

check("hover on a drink's name says its strength", function()
  go("Sour")
  vim.lsp.buf.hover()
  local text = await("a hover", function()
    for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.api.nvim_win_get_config(window).relative ~= "" then
        return table.concat(lines(vim.api.nvim_win_get_buf(window)), "\n")
      end
    end
  end)
  vim.cmd("normal! gg0") -- The hover closes.
  assert(text:find("| strength | [%d.]+ ± [%d.]+ %% vol"), text)
  assert(text:find("oz", 1, true), "it is not in the unit of the settings: " .. text)
end)

check("a refactoring is made once it is chosen", function()
  go("60 ml")
  vim.ui.select = function(actions, options, choose)
    for index, action in ipairs(actions) do
      if options.format_item(action):find("Make a riff of", 1, true) then return choose(action, index) end
    end
  end
  vim.lsp.buf.code_action()
  await("the riff", function() return vim.tbl_contains(lines(card), "  from: Été 🍋 Sour") end, function() return lines(card) end)
  vim.cmd("silent undo")
end)

check("completion offers the house's ingredient while typing", function()
  vim.api.nvim_win_set_cursor(0, { 6, 0 })
  local words
  local function look(left)
    words = vim.tbl_map(function(one) return one.word end, vim.fn.complete_info({ "items" }).items)
    if #words == 0 and left > 0 then return vim.defer_fn(function() look(left - 1) end, 50) end
    vim.api.nvim_input("<C-e><Esc>")
  end
  vim.defer_fn(function() look(200) end, 50)
  -- It stays in the text until `look` has seen enough.
  vim.api.nvim_feedkeys(vim.api.nvim_replace_termcodes("o  5 ml ferry<C-x><C-o>", true, false, true), "x!", false)
  assert(vim.tbl_contains(words, "ferry rum"), vim.inspect(words))
  vim.cmd("silent undo")
end)

check("changed settings take effect at once, and a wrong one is said without a question", function()
  local client = client_of(card)
  client.config.settings = { mutchkin = { units = "thimbles" } }
  client.notify("workspace/didChangeConfiguration", { settings = client.config.settings })
  finding(card, "missing-garnish")
  await("the sentence", function() return said[1] end)
  assert(said[1]:find("window/showMessage: .*thimbles"), said[1])
  client.config.settings = { mutchkin = { severity = { ["missing-garnish"] = "off" } } }
  client.notify("workspace/didChangeConfiguration", { settings = client.config.settings })
  without(card, "missing-garnish")
  eq(#said, 1)
end)

check("a spec in Markdown has its findings and hovers, from the same server", function()
  local book = edit("book.md")
  eq(vim.bo.filetype, "markdown")
  eq(client_of(book).id, client_of(card).id)
  local found = finding(book, "unknown-ingredient")
  eq({ found.lnum, found.col }, { 7, 10 })
  assert(found.message:find("“lamp oil”", 1, true), found.message)
  local answers = vim.lsp.buf_request_sync(book, "textDocument/hover", {
    textDocument = vim.lsp.util.make_text_document_params(),
    position = { line = 5, character = 9 },
  }, 15000)
  assert(vim.inspect(answers):find("Ebb", 1, true), vim.inspect(answers))
end)

quit()
