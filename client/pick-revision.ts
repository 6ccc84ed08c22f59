/** Asks which revision is meant: branches, tags and the last commits as they are found, or any other as it is typed. */
import * as vscode from "vscode";

export interface Revision {
  readonly name: string;
  readonly date: string;
  readonly subject: string;
}

export interface Revisions {
  readonly revisions?: readonly Revision[];
  readonly problem?: string;
}

type Kind = "branches" | "tags" | "commits";
type Item = vscode.QuickPickItem & { readonly revision?: string };

/** In the order in which they are offered. One row each. */
const kinds = {
  branches: { heading: "Branches", icon: "git-branch" },
  tags: { heading: "Tags", icon: "tag" },
  commits: { heading: "Recent Commits", icon: "git-commit" },
} satisfies Record<Kind, object>;

/** The revision's name; a problem where there are none to choose from, and nothing where the person has left. */
export function pickRevision(title: string, list: (kind: Kind) => Promise<Revisions>): Promise<string | { problem: string } | undefined> {
  const pick = vscode.window.createQuickPick<Item>();
  Object.assign(pick, { title, placeholder: "Which revision? Type any other, such as HEAD~3.", matchOnDescription: true, busy: true });
  const found = new Map<Kind, readonly Item[]>();
  const show = () => {
    const items = (Object.keys(kinds) as Kind[]).flatMap((kind) => headed(kind, found.get(kind) ?? []));
    const typed = pick.value.trim();
    const isListed = items.some(({ revision }) => revision === typed);
    pick.items = [...items, ...(typed && !isListed ? [otherOf(typed)] : [])];
  };
  pick.onDidChangeValue(show);
  return new Promise((resolve) => {
    const fill = async (kind: Kind) => {
      const { revisions = [], problem } = await list(kind);
      if (problem !== undefined) return close({ problem });
      found.set(
        kind,
        revisions.map((one) => itemOf(kind, one)),
      );
      show();
    };
    const close = (answer: string | { problem: string } | undefined) => {
      resolve(answer);
      pick.hide();
    };
    pick.onDidAccept(() => {
      const [item] = pick.selectedItems;
      if (item?.revision !== undefined) close(item.revision);
    });
    pick.onDidHide(() => {
      resolve(undefined);
      pick.dispose();
    });
    pick.show();
    Promise.all((Object.keys(kinds) as Kind[]).map(fill)).then(
      () => {
        pick.busy = false;
      },
      () => close({ problem: "The revisions could not be listed. The output says why." }),
    );
  });
}

function headed(kind: Kind, items: readonly Item[]): Item[] {
  return items.length > 0 ? [{ label: kinds[kind].heading, kind: vscode.QuickPickItemKind.Separator }, ...items] : [];
}

/** A commit is known by what was said of it, the others by their names. */
function itemOf(kind: Kind, { name, date, subject }: Revision): Item {
  const [label, rest] = kind === "commits" ? [subject || name, name] : [name, subject];
  return { label: `$(${kinds[kind].icon}) ${label}`, description: [date, rest].filter(Boolean).join(" · "), revision: name };
}

function otherOf(typed: string): Item {
  return { label: `$(edit) ${typed}`, description: "another revision", revision: typed, alwaysShow: true };
}
