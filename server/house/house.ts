/**
 * The house: every text at hand, the names they declare, and what was computed from them.
 *
 * It is handed trees and never reads a file, a clock or a setting itself. A change to one text drops
 * only what was computed from the names whose meaning it changed; everything else stands.
 */
import type { Entry, Name, Tree } from "../../grammar/tree.ts";
import type { Model } from "../engine/plan.ts";
import { changedKeys, declare, keyOf, keysIn, keysOf, undeclare } from "./declarations.ts";
import type { SpecDocument } from "./document.ts";
import { drinkModel } from "./drink.ts";
import { layScopes } from "./lay-scopes.ts";
import { Memo } from "./memo.ts";
import { fold, type NameClass, type Step, stepBetween } from "./names.ts";
import { prepModel } from "./prep.ts";
import { reuse } from "./reuse.ts";
import { candidates, type Declaration, modifierTexts, type Resolution, type Scope, unquoted } from "./scope.ts";

export interface HouseOptions {
  /** The built-in larder, already read. Its documents are never listed and never found fault with. */
  readonly larder: readonly SpecDocument[];
  /** The folders that are open, as URIs without a closing slash: a file without a `house` above it belongs to one of them. */
  readonly roots?: readonly string[];
}

const larderFolder = "larder:";

export class House {
  readonly memo = new Memo();
  private readonly texts = new Map<string, SpecDocument>();
  private readonly owners = new Map<Entry, SpecDocument>();
  private readonly indexes = new WeakMap<Tree, ReadonlyMap<Entry, number>>();
  private readonly larder: Scope;
  /** Which scope a text belongs to; absent until it is asked for, and again when a `house` came or went. */
  private scopes: ReturnType<typeof layScopes> | undefined;
  private stale = new Set<SpecDocument>();
  private gone = new Set<string>();
  private roots: readonly string[];

  constructor(private readonly options: HouseOptions) {
    this.roots = options.roots ?? [];
    this.larder = { folder: larderFolder, parent: undefined, houses: [], names: new Map() };
    for (const document of options.larder) this.declareAll(document, this.larder);
  }

  /** Takes in a new text, or the next version of one. */
  setDocument(document: SpecDocument): void {
    const before = this.texts.get(document.uri);
    const after = before ? { ...document, tree: reuse(before.tree, document.tree) } : document;
    this.texts.set(document.uri, after);
    this.gone.delete(document.uri);
    this.replace(before, after);
  }

  removeDocument(uri: string): void {
    const before = this.texts.get(uri);
    if (!before) return;
    this.texts.delete(uri);
    this.gone.add(uri);
    this.replace(before, undefined);
  }

  /** Another house with the same texts but for these: to see what a change would mean. */
  supposing(texts: readonly SpecDocument[]): House {
    const other = new House({ ...this.options, roots: this.roots });
    for (const document of [...this.texts.values(), ...texts]) other.setDocument(document);
    return other;
  }

  setRoots(roots: readonly string[]): void {
    this.roots = roots;
    this.forgetScopes();
  }

  document(uri: string): SpecDocument | undefined {
    return this.texts.get(uri);
  }

  documents(): Iterable<SpecDocument> {
    return this.texts.values();
  }

  /** The text that an entry stands in now; absent for an entry that an edit has replaced. */
  findDocumentOf(entry: Entry): SpecDocument | undefined {
    return this.owners.get(entry);
  }

  /** The text that an entry stands in now. Throws for an entry of no text at hand. */
  getDocumentOf(entry: Entry): SpecDocument {
    const document = this.owners.get(entry);
    if (!document) throw new Error("This entry is in no text of the house.");
    return document;
  }

  /** Whether an entry is one of the built-in larder's. */
  isLarder(entry: Entry): boolean {
    return this.owners.get(entry)?.uri.startsWith(larderFolder) ?? false;
  }

  /** The number of the file's line that an entry starts on. */
  getLineOf(entry: Entry): number {
    return this.getDocumentOf(entry).tree.starts[this.getIndexOf(entry)] ?? 0;
  }

  /** The number of an entry in its text. */
  getIndexOf(entry: Entry): number {
    const { tree } = this.getDocumentOf(entry);
    let indexes = this.indexes.get(tree);
    if (!indexes) {
      indexes = new Map(tree.entries.map((one, index) => [one, index]));
      this.indexes.set(tree, indexes);
    }
    return indexes.get(entry)!;
  }

  /** The documents that may have new findings since this was last asked. */
  takeStale(): SpecDocument[] {
    this.standScopes();
    const documents = [...this.stale].filter((document) => this.texts.get(document.uri) === document);
    this.stale = new Set();
    return documents;
  }

  /** The texts that went since this was last asked. */
  takeGone(): string[] {
    const uris = [...this.gone];
    this.gone = new Set();
    return uris;
  }

  /** The scope that an entry or a text belongs to. */
  scopeOf(of: Entry | SpecDocument): Scope {
    const document = "uri" in of ? of : this.getDocumentOf(of);
    return document.uri.startsWith(larderFolder) ? this.larder : this.standScopes()(document);
  }

  /** Computes a query of an entry once, until a name that it looked up changes its meaning. */
  recall<T>(entry: Entry, query: string, compute: () => T): T {
    return this.memo.get(entry, query, compute);
  }

  /** Every declaration of a name that is visible from a scope at the strictest step that any has, the nearest scope's first. */
  lookup(scope: Scope, nameClass: NameClass, text: string): readonly Declaration[] {
    const key = keyOf(nameClass, fold(text));
    let best: Declaration[] = [];
    let bestStep: Step = 2;
    this.memo.note(key);
    for (let at: Scope | undefined = scope; at; at = at.parent) {
      const there = this.inOrder(at.names.get(key));
      for (const declaration of there) {
        const step = stepBetween(declaration.name, text);
        if (step < bestStep || best.length === 0) [best, bestStep] = [[declaration], step];
        else if (step === bestStep) best.push(declaration);
      }
    }
    return best;
  }

  /**
   * What a name means. A stock that gives no `aka` of its own goes by those of the stock below that it takes
   * its figures from: where the house buys `mint`, the larder's `mint leaf` is that mint.
   */
  find(scope: Scope, nameClass: NameClass, text: string): Declaration | undefined {
    const found = this.lookup(scope, nameClass, text)[0];
    if (!found?.alias || found.entry.kind !== "stock" || !found.entry.name) return found;
    const nearer = this.lookup(scope, nameClass, found.entry.name.text)[0];
    return nearer?.entry.kind === "stock" && !nearer.alias ? { ...found, entry: nearer.entry } : found;
  }

  /** What a name in a pour, a field or a menu means: the longest declared reading wins. */
  resolve(scope: Scope, classes: readonly NameClass[], name: Name): Resolution {
    if (!name.quoted) {
      for (const { text, end, cut } of candidates(name)) {
        for (const nameClass of classes) {
          const found = this.find(scope, nameClass, text);
          if (found) return { found, text, start: name.start, end, modifiers: modifierTexts(name, cut) };
        }
      }
    }
    const first = name.commas[0];
    const text = first === undefined || name.quoted ? unquoted(name) : name.text.slice(0, first - name.start).trimEnd();
    const found = name.quoted ? classes.map((nameClass) => this.find(scope, nameClass, text)).find(Boolean) : undefined;
    const end = name.quoted ? name.quoted.end : name.start + text.length;
    return { ...(found && { found }), text, start: name.start, end, modifiers: modifierTexts(name, 0) };
  }

  /** Every declaration visible from a scope, the nearest first; what asks for it depends on every head and `aka`. */
  *declarations(scope: Scope, nameClass: NameClass): Generator<Declaration> {
    this.memo.note(keyOf(nameClass, "*"));
    for (let at: Scope | undefined = scope; at; at = at.parent) {
      for (const key of keysIn(at, nameClass)) yield* at.names.get(key) ?? [];
    }
  }

  /** The books that a scope can see, the nearest scope's first; what asks for them depends on all that each of them says. */
  booksIn(scope: Scope): readonly Entry[] {
    this.memo.note(keyOf("book", "*"));
    const books: Entry[] = [];
    for (let at: Scope | undefined = scope; at; at = at.parent) {
      if (at.books) books.push(...this.inOrder([...at.books].map((entry) => ({ entry }))).map(({ entry }) => entry));
    }
    for (const { name } of books) this.memo.note(keyOf("book", fold(name?.text ?? "")));
    return books;
  }

  /** Notes that what is being computed depends on what stands around it in a Markdown text, and answers the text. */
  noteText(entry: Entry): SpecDocument {
    const document = this.getDocumentOf(entry);
    this.memo.note(textKey(document));
    return document;
  }

  /** What a prep, or a drink poured in a drink, is made of. Asked of the house, since each may hold the other. */
  modelOf(entry: Entry): Model {
    return entry.kind === "prep" ? prepModel(this, entry) : drinkModel(this, entry);
  }

  /** The entries of which something was computed from what these keys mean, or from what was computed from that in turn. */
  hangingOn(keys: readonly string[]): Set<Entry> {
    const found = new Set<Entry>();
    const pending = [...keys];
    for (let key = pending.pop(); key !== undefined; key = pending.pop()) {
      for (const entry of this.memo.dependentsOf(key)) {
        if (found.has(entry)) continue;
        found.add(entry);
        if (this.owners.has(entry)) pending.push(...keysOf(entry));
      }
    }
    return found;
  }

  /** Notes that what is being computed depends on the `house` entries. */
  noteSettings(): void {
    this.memo.note(keyOf("house", "*"));
  }

  /** Which of two equal names counts must not depend on which was typed last. */
  private inOrder<D extends Pick<Declaration, "entry">>(declarations: readonly D[] | undefined): readonly D[] {
    if (!declarations || declarations.length < 2) return declarations ?? [];
    const place = ({ entry }: D) => ({ uri: this.owners.get(entry)?.uri ?? "", line: this.getLineOf(entry) });
    return [...declarations].sort((one, other) => {
      const [here, there] = [place(one), place(other)];
      return here.uri < there.uri ? -1 : here.uri > there.uri ? 1 : here.line - there.line;
    });
  }

  private standScopes(): ReturnType<typeof layScopes> {
    if (this.scopes) return this.scopes;
    this.scopes = layScopes([...this.texts.values()], this.roots, this.larder);
    for (const document of this.texts.values()) this.declareAll(document, this.scopes(document));
    return this.scopes;
  }

  private forgetScopes(): void {
    this.scopes = undefined;
    this.memo.clear();
    for (const document of this.texts.values()) this.stale.add(document);
  }

  private replace(before: SpecDocument | undefined, after: SpecDocument | undefined): void {
    const kept = new Set(after?.tree.entries);
    const known = new Set(before?.tree.entries);
    const gone = (before?.tree.entries ?? []).filter((entry) => !kept.has(entry));
    const fresh = (after?.tree.entries ?? []).filter((entry) => !known.has(entry));
    if (after) this.stale.add(after);
    if (before && !after) for (const entry of before.tree.entries) this.owners.delete(entry);
    for (const entry of gone) this.owners.delete(entry);
    if (after) for (const entry of after.tree.entries) this.owners.set(entry, after);
    const houses = (entries: readonly Entry[]) => entries.filter((entry) => entry.kind === "house").length;
    if (houses(gone) !== houses(fresh)) this.forgetScopes();
    if (!this.scopes) return;
    const scope = this.scopes((after ?? before)!);
    const changed = changedKeys(gone, fresh);
    if (houses(gone) > 0) {
      this.swapHouse(scope, gone, fresh);
      changed.push(keyOf("house", "*"));
    }
    if ((after ?? before)?.margins) changed.push(textKey((after ?? before)!));
    undeclare(scope, gone);
    declare(scope, fresh);
    for (const entry of gone) this.memo.drop(entry);
    this.spread(changed);
  }

  /** Drops everything computed from the changed names, and what was computed from that in turn. */
  private spread(changed: readonly string[]): void {
    for (const entry of this.hangingOn(changed)) {
      this.memo.drop(entry);
      const document = this.owners.get(entry);
      if (document) this.stale.add(document);
    }
  }

  private swapHouse(scope: Scope, gone: readonly Entry[], fresh: readonly Entry[]): void {
    const entries = fresh.filter((entry) => entry.kind === "house");
    scope.houses = scope.houses.map((one) => (gone.includes(one) ? entries.shift()! : one));
  }

  private declareAll(document: SpecDocument, scope: Scope): void {
    declare(scope, document.tree.entries);
    for (const entry of document.tree.entries) this.owners.set(entry, document);
  }
}

/** Under which what was computed from a Markdown text's order of entries is noted. */
function textKey({ uri }: SpecDocument): string {
  return `text|${uri}`;
}
