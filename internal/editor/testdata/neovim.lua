-- One session in Neovim without a screen: a fault is typed, it is marked, its remedy is applied, the mark goes, the file
-- is saved. What was seen is written as lines to the file that SEEN names.
local seen = {}
local function say(...) table.insert(seen, table.concat({...}, " ")) end
local function leave(status)
  vim.fn.writefile(seen, vim.env.SEEN)
  vim.cmd(status == 0 and "qall!" or "cquit!")
end
local function wait_for(what, ready)
  if not vim.wait(60000, ready, 20) then
    say("waited in vain for", what)
    leave(1)
  end
end
local function lines(text) return (text:gsub("\n", " | ")) end

vim.cmd("edit " .. vim.env.LOOP)
local buffer = vim.api.nvim_get_current_buf()
local client = vim.lsp.start_client({ name = "dryfit", cmd = { vim.env.DRYFIT, "editor" }, root_dir = vim.fn.getcwd() })
local published = 0
local usual = vim.lsp.handlers["textDocument/publishDiagnostics"]
vim.lsp.get_client_by_id(client).handlers["textDocument/publishDiagnostics"] = function(...)
  published = published + 1
  return usual(...)
end
vim.lsp.buf_attach_client(buffer, client)
local function fault()
  for _, d in ipairs(vim.diagnostic.get(buffer)) do
    if d.code == "well_depth" then return d end
  end
end
wait_for("the first review", function() return published > 0 end)
say("at first marked:", tostring(fault() ~= nil))

-- the lip is set too high
vim.fn.search("lip_at:")
local row = vim.fn.line(".")
vim.cmd("normal! $")
vim.fn.search("305", "b")
vim.cmd("normal! ciw400")
say("typed:", vim.trim(vim.fn.getline(row)))
wait_for("the mark", fault)
local d = fault()
say("marked:", d.source, "severity", d.severity, "in line", d.lnum - row + 1)
say("message:", lines(d.message))

-- what the key means
local answer = vim.lsp.buf_request_sync(buffer, "textDocument/hover", vim.lsp.util.make_position_params(), 60000)
say("hover:", lines(answer[client].result.contents.value):sub(1, 120))

-- the remedy is chosen from the list of what can be done here
vim.ui.select = function(items, options, choose)
  for _, item in ipairs(items) do say("offered:", options.format_item(item)) end
  choose(items[1], 1)
end
vim.lsp.buf.code_action()
wait_for("the remedy", function() return vim.fn.getline(row):find("400") == nil end)
say("applied:", vim.trim(vim.fn.getline(row)))
wait_for("the mark to go", function() return fault() == nil end)
say("marked:", tostring(fault() ~= nil))

-- what is half typed is completed
vim.fn.append(row, "      top")
vim.api.nvim_win_set_cursor(0, { row + 1, 8 })
vim.bo.omnifunc = "v:lua.vim.lsp.omnifunc"
local offers = vim.lsp.buf_request_sync(buffer, "textDocument/completion", { textDocument = vim.lsp.util.make_text_document_params(), position = { line = row, character = 9 } }, 60000)
for _, item in ipairs(offers[client].result.items) do
  if item.label:find("^top") then say("completion:", item.label, item.textEdit.newText) end
end
vim.fn.deletebufline(buffer, row + 1)

-- from the end of a line to the vessel where it ends
vim.fn.search("to: settler.well")
vim.cmd("normal! $")
vim.lsp.buf.definition()
wait_for("the definition", function() return vim.fn.getline("."):find("well:") ~= nil end)
say("definition:", vim.trim(vim.fn.getline(".")))

vim.cmd("write")
vim.lsp.stop_client(client)
wait_for("the server to end", function() return vim.lsp.get_client_by_id(client) == nil end)
leave(0)
