import { afterEach, expect, test, vi } from "vitest";
import type { Connection } from "vscode-languageserver";
import { read } from "../../grammar/read.ts";
import type { SpecDocument } from "../../server/house/document.ts";
import { Refresher } from "../../server/lsp/refresher.ts";

const documentOf = (uri: string, version = 1): SpecDocument => ({ uri, version, tree: read("drink Slip\n") });

function setUp() {
  vi.useFakeTimers();
  const asked: string[] = [];
  const ask = (what: string) => async () => {
    asked.push(what);
  };
  const connection = {
    sendRequest: ask("lenses"),
    languages: { semanticTokens: { refresh: ask("tokens") }, inlayHint: { refresh: ask("hints") } },
  } as unknown as Connection;
  const can = { refreshSupport: true };
  const refresher = new Refresher(
    connection,
    () => ({ workspace: { semanticTokens: can, inlayHint: can, codeLens: can } }),
    (uri) => uri !== "closed",
  );
  const rest = () => {
    vi.advanceTimersByTime(5000);
    return asked.splice(0).sort();
  };
  return { refresher, rest };
}

afterEach(() => vi.useRealTimers());

test("what is typed in a text has its own colours asked for by the editor, and only lenses may differ elsewhere", () => {
  const { refresher, rest } = setUp();
  refresher.touched([documentOf("card", 1)]);
  refresher.touched([documentOf("card", 2)]);
  expect(rest()).toEqual(["lenses"]);
});

test("a text that was touched without being edited is asked for again, once, when typing rests", () => {
  const { refresher, rest } = setUp();
  const card = documentOf("card");
  refresher.touched([card]);
  rest();
  for (let key = 0; key < 20; key++) {
    refresher.touched([documentOf("shelf", key), card]);
    vi.advanceTimersByTime(100);
  }
  expect(rest()).toEqual(["hints", "lenses", "tokens"]);
  expect(rest()).toEqual([]);
});

test("a closed text has nothing to show", () => {
  const { refresher, rest } = setUp();
  const closed = documentOf("closed");
  refresher.touched([closed]);
  refresher.touched([closed]);
  expect(rest()).toEqual(["lenses"]);
});

test("a changed setting has all of it asked for again; a stopped server asks for nothing", () => {
  const { refresher, rest } = setUp();
  refresher.all();
  expect(rest()).toEqual(["hints", "lenses", "tokens"]);
  refresher.all();
  refresher.stop();
  expect(rest()).toEqual([]);
});
