/** What the page says is answered is answered, and nothing else: asked of the real server, method by method of the protocol. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import * as protocol from "vscode-languageserver";
import { requests } from "../../server/lsp/requests.ts";
import { nowhere, start } from "./start.ts";

const page = readFileSync("server/lsp/README.md", "utf8");
/** Of the life cycle, and held until there is news: `life-cycle.test.ts` and `diagnostics.test.ts` ask them. */
const askedElsewhere = ["initialize", "shutdown", "workspace/diagnostic"];

/** Every request that a client may send, by the protocol's own table. */
const ofProtocol = Object.values(protocol).flatMap((one) => {
  const { messageDirection, type } = one as { messageDirection?: string; type?: { method: string; numberOfParams?: number } };
  const isRequest = type?.constructor.name.includes("RequestType") ?? false;
  return isRequest && type && messageDirection !== "serverToClient" ? [type.method] : [];
});

test("every request on the page is answered, every other one of the protocol is refused as unknown", async () => {
  expect(ofProtocol.length).toBeGreaterThan(40);
  const client = await start();
  const uri = nowhere("card.drink");
  await client.open(uri, "drink Slip\n  60 ml gin\n");
  const position = { line: 1, character: 9 };
  const range = { start: position, end: position };
  const params = { textDocument: { uri }, position, range, positions: [position], query: "", context: { diagnostics: [] } };
  const answered: string[] = [];
  for (const method of new Set([...ofProtocol, ...requests.map(({ method }) => method)])) {
    if (askedElsewhere.includes(method)) continue;
    const unknown = await client.request(method, params).then(
      () => false,
      ({ code }: { code: number }) => code === protocol.ErrorCodes.MethodNotFound,
    );
    if (!unknown) answered.push(method);
  }
  const listed = [...page.matchAll(/^\| `([\w/]+)`/gm)].map(([, method]) => method!);
  expect(answered.filter((method) => !page.includes(`\`${method}\``))).toEqual([]);
  expect(requests.map(({ method }) => method).filter((method) => !answered.includes(method) || !listed.includes(method))).toEqual([]);
});
