/**
 * What a person meets in the editor, asked of the editor itself. Runs inside its extension host, by
 * `run.mjs` or by `electron.mjs`; CommonJS, since that is what the extension host loads, and nothing of
 * Node's, which a browser does not have.
 */
const vscode = require("vscode");

const inFolder = {
  "a wrong name is marked, at its place": async () => {
    const document = await openSours();
    const finding = await findingOn(document, "lemon juce");
    equal(document.getText(finding.range).includes("lemon juce"), true, `marks "${document.getText(finding.range)}"`);
    equal(/unknown/i.test(codeOf(finding)), true, `has the code "${codeOf(finding)}"`);
  },

  "a finding leads to what its rule says": async () => {
    const { code } = await findingOn(await openSours(), "lemon juce");
    const page = await vscode.workspace.openTextDocument(code.target);
    equal(page.getText().includes(`## ${code.value}\n`), true, `${code.target} says: ${page.getText().slice(0, 200)}`);
  },

  "a drink's name tells its strength and dilution": async () => {
    const text = await hoverOn(await openSours(), "Slipway");
    // While an ingredient is unknown, so are the figures; the words are there all the same.
    equal(/strength/i.test(text) && /dilut/i.test(text), true, `says: ${text}`);
  },

  "a quick fix puts the name right, and the finding ends": async () => {
    const document = await openSours();
    const finding = await findingOn(document, "lemon juce");
    let actions = [];
    const fixIn = () => actions.find((action) => action.edit && /lemon juice/i.test(action.title));
    await until(
      async () => {
        const asked = vscode.commands.executeCommand("vscode.executeCodeActionProvider", document.uri, finding.range);
        // The editor cancels what was asked when one of its own extensions comes up in between.
        actions = await asked.then(undefined, () => []);
        return fixIn();
      },
      () => `offers: ${actions.map((action) => action.title).join(" | ") || "nothing"}`,
    );
    const fix = fixIn();
    await vscode.workspace.applyEdit(fix.edit);
    await until(
      () => /22\.5 ml lemon juice\n/.test(document.getText()),
      () => `the text is ${document.getText()}`,
    );
    await until(() => !findings(document).some((one) => /lemon ju/.test(one.message)), "the finding stays");
    const hover = await hoverOn(document, "Slipway");
    equal(/\d+(\.\d+)?\s*(±\s*\d+(\.\d+)?\s*)?%/.test(hover), true, `has no strength: ${hover}`);
    await vscode.commands.executeCommand("undo");
    await until(() => document.getText().includes("lemon juce"), "undo does not bring the text back");
    await findingOn(document, "lemon juce");
  },

  "a rule turned off in the settings is silent at once, and speaks again": async () => {
    const document = await openSours();
    const code = codeOf(await findingOn(document, "lemon juce"));
    const settings = vscode.workspace.getConfiguration("mutchkin", document.uri);
    await settings.update("severity", { [code]: "off" }, vscode.ConfigurationTarget.Workspace);
    await until(() => !findings(document).some((one) => codeOf(one) === code), `${code} stays`);
    await settings.update("severity", undefined, vscode.ConfigurationTarget.Workspace);
    await findingOn(document, "lemon juce");
  },

  "amounts are shown in the unit of the settings": async () => {
    const document = await openSours();
    const settings = vscode.workspace.getConfiguration("mutchkin", document.uri);
    const volume = async () => /volume \|[^|]*/.exec(await hoverOn(document, "Harbour"))?.[0] ?? "no volume";
    const before = await volume();
    equal(/ml/.test(before), true, `the house's ml are not in: ${before}`);
    await settings.update("units", "oz", vscode.ConfigurationTarget.Workspace);
    await until(async () => / oz\b/.test(await volume()), `no ounce in: ${before}`);
    await settings.update("units", undefined, vscode.ConfigurationTarget.Workspace);
    await until(async () => (await volume()) === before, "ounces stay");
  },

  "names have their colours, a drink its figures behind its name": async () => {
    const document = await openSours();
    await findingOn(document, "lemon juce");
    const all = new vscode.Range(0, 0, document.lineCount, 0);
    const legend = await vscode.commands.executeCommand("vscode.provideDocumentSemanticTokensLegend", document.uri);
    const { data } = await vscode.commands.executeCommand("vscode.provideDocumentSemanticTokens", document.uri);
    const looks = [...data].flatMap((type, at) => (at % 5 === 3 ? legend.tokenTypes[type] : []));
    for (const look of ["class", "interface", "struct", "variable", "string"])
      equal(looks.includes(look), true, `${look} is not in ${looks}`);
    const hints = await vscode.commands.executeCommand("vscode.executeInlayHintProvider", document.uri, all);
    equal(/% vol · \d+ ml/.test(hints[0]?.label), true, `the first hint is ${hints[0]?.label}`);
  },

  "a lens counts who uses a thing, and a click lists the places": async () => {
    const house = vscode.Uri.joinPath((await openSours()).uri, "../house.drink");
    const document = await vscode.workspace.openTextDocument(house);
    await vscode.window.showTextDocument(document);
    let lens;
    await until(async () => {
      const lenses = await vscode.commands.executeCommand("vscode.executeCodeLensProvider", house, 100);
      lens = lenses.find(({ command }) => command?.title === "poured in 2 drinks");
      return lens;
    }, "no lens counts two drinks");
    equal(lens.command.command, "mutchkin.showReferences", `a click runs "${lens.command.command}"`);
    await vscode.commands.executeCommand(lens.command.command, ...lens.command.arguments);
    await vscode.commands.executeCommand("closeReferenceSearch");
  },

  "a file changed on disk is read again": async () => {
    const document = await openSours();
    await findingOn(document, "lemon juce");
    const house = vscode.Uri.joinPath(document.uri, "../house.drink");
    const text = await vscode.workspace.fs.readFile(house);
    await vscode.workspace.fs.writeFile(
      house,
      new Uint8Array([...text, ...new TextEncoder().encode("\nstock lemon juce\n  kind: juice\n")]),
    );
    await until(() => !findings(document).some((one) => document.getText(one.range).includes("lemon juce")), "the name stays unknown");
    await vscode.workspace.fs.writeFile(house, text);
    await findingOn(document, "lemon juce");
  },

  "a spec in a quoted list of a chapter is checked, computed and renamed at its place": async () => {
    const document = await openSpec("book.md");
    const finding = await findingOn(document, "plain sirup");
    equal(document.getText(finding.range), "plain sirup", `marks "${document.getText(finding.range)}"`);
    equal(/strength/i.test(await hoverOn(document, "Gangway")), true, "has no figures");
    equal(await hoverOn(document, "sixty of"), "", "says something about prose");
    const place = document.positionAt(document.getText().indexOf("aged rum") + 2);
    const edit = await vscode.commands.executeCommand("vscode.executeDocumentRenameProvider", document.uri, place, "ferry rum");
    const files = edit.entries().map(([uri]) => uri.path.replace(/.*[/]/, ""));
    equal(
      ["book.md", "house.drink", "sours.drink"].every((file) => files.includes(file)),
      true,
      `renames in: ${files.join()}`,
    );
  },

  "what changed since a revision is shown, its rows lead to their places, and a diff tells it in figures": async () => {
    // In a browser there is no git to ask.
    if (vscode.env.uiKind === vscode.UIKind.Web && !vscode.env.remoteName) return;
    const document = await openSours();
    const was = "60 ml aged rum\n";
    const start = document.positionAt(document.getText().indexOf(was));
    const line = document.positionAt(document.getText().indexOf("drink Harbour")).line;
    const edit = new vscode.WorkspaceEdit();
    edit.replace(document.uri, new vscode.Range(start, start.translate(0, 2)), "50");
    await vscode.workspace.applyEdit(edit);

    const compared = vscode.commands.executeCommand("mutchkin.compare");
    const tabs = () => vscode.window.tabGroups.all.flatMap((group) => group.tabs);
    await until(
      async () => {
        // The first on offer is the branch.
        await vscode.commands.executeCommand("workbench.action.acceptSelectedQuickOpenItem");
        return tabs().some(({ input, label }) => input instanceof vscode.TabInputWebview && label === "Drinks: main → now");
      },
      () =>
        `the tabs are: ${tabs()
          .map(({ label }) => label)
          .join(", ")}`,
    );
    await compared;

    const uri = document.uri.toString();
    await vscode.commands.executeCommand("mutchkin.openPlace", { uri, line });
    equal(vscode.window.activeTextEditor?.selection.start.line, line, "a row does not lead to its place");
    const active = () => vscode.window.activeTextEditor?.document.uri.toString();
    await vscode.commands.executeCommand("mutchkin.openPlace", { uri: "file:///etc/elsewhere.md", line: 0 });
    equal(active(), uri, "a link opens what is in no folder that is open");
    const head = vscode.Uri.joinPath(vscode.workspace.workspaceFolders[0].uri, ".git/refs/heads/main");
    const commit = new TextDecoder().decode(await vscode.workspace.fs.readFile(head)).trim();
    await vscode.commands.executeCommand("mutchkin.openBeside", { uri, line, commit }, { uri, line });
    const diff = () => tabs().find(({ input }) => input instanceof vscode.TabInputTextDiff);
    await until(diff, "no diff editor opens");
    const original = await vscode.workspace.openTextDocument(diff().input.original);
    equal(original.getText().includes(was), true, `the text as it was is: ${original.getText().slice(0, 200)}`);
    const all = new vscode.Range(0, 0, document.lineCount, 0);
    const hints = () => vscode.commands.executeCommand("vscode.executeInlayHintProvider", document.uri, all);
    const changes = async () => (await hints()).filter(({ label }) => /→/.test(label));
    await until(async () => (await changes()).some(({ label }) => /strength \S+ → \S+ % vol/.test(label)), "no hint tells the change");
    equal((await changes())[0].position.line, line, "the hint stands elsewhere");
    await vscode.window.tabGroups.close(diff());
    await until(async () => (await changes()).length === 0, "the hint stays when the diff editor is closed");
    await vscode.window.tabGroups.close(tabs().filter(({ input }) => input instanceof vscode.TabInputWebview));
    await vscode.window.showTextDocument(document);
    const back = new vscode.WorkspaceEdit();
    back.replace(document.uri, new vscode.Range(start, start.translate(0, 2)), "60");
    await vscode.workspace.applyEdit(back);
    equal(document.getText().includes(was), true, "the text is not as it was");
  },

  "a chapter is shown as it will print, and a value in its text says what that is": async () => {
    const uri = vscode.Uri.joinPath((await openSours()).uri, "../book.md");
    const chapter = await vscode.workspace.openTextDocument(uri);
    await vscode.window.showTextDocument(chapter);
    equal(/Prints \*\*60.ml/.test(await hoverOn(chapter, "pour[")), true, "the value's hover does not say what it prints");
    await vscode.commands.executeCommand("mutchkin.previewChapter");
    const previews = () =>
      vscode.window.tabGroups.all
        .flatMap((group) => group.tabs)
        .filter(({ input, label }) => input instanceof vscode.TabInputWebview && label === "Slack Water (preview)");
    await until(() => previews().length === 1, "no preview opens");
    await vscode.window.tabGroups.close(previews());
  },

  "the server stops and starts at a word": async () => {
    const document = await openSours();
    await findingOn(document, "lemon juce");
    await vscode.commands.executeCommand("mutchkin.stopServer");
    await until(() => findings(document).length === 0, "findings stay when the server is stopped");
    await vscode.commands.executeCommand("mutchkin.startServer");
    await findingOn(document, "lemon juce");
    await vscode.commands.executeCommand("mutchkin.restartServer");
    await findingOn(document, "lemon juce");
  },
};

const anywhere = {
  "a spec that was never saved is checked and computed": async () => {
    const content = "drink Untied\n  glass: none\n  method: shake 12 s\n  50 ml harbour fogg\n";
    const document = await vscode.workspace.openTextDocument({ language: "mutchkin", content });
    await vscode.window.showTextDocument(document);
    await findingOn(document, "harbour fogg");
    equal(/Untied/.test(await hoverOn(document, "Untied")), true, "the hover does not name the drink");
  },

  "a drink is brought to a target by the keyboard alone": async () => {
    // Between two marks of the jigger, so that the nearest way to the ratio that it has is one mark.
    const content = "drink Untied\n  glass: none\n  method: shake 12 s\n  50 ml rum\n  23 ml lime juice\n  21 ml plain syrup\n";
    const document = await vscode.workspace.openTextDocument({ language: "mutchkin", content });
    await vscode.window.showTextDocument(document);
    const adjusted = vscode.commands.executeCommand("mutchkin.adjust");
    await until(
      async () => {
        await vscode.commands.executeCommand("workbench.action.acceptSelectedQuickOpenItem");
        return document.getText().includes("22.5 ml lime juice");
      },
      () => `the text is ${document.getText()}`,
    );
    await adjusted;
  },

  "a name is changed where it is declared and called, and one that is taken is refused": async () => {
    const content = "drink Bollard\n  50 ml rum\n\ndrink Hawser\n  from: Bollard\n";
    const document = await vscode.workspace.openTextDocument({ language: "mutchkin", content });
    await vscode.window.showTextDocument(document);
    const renamed = (name) =>
      vscode.commands.executeCommand("vscode.executeDocumentRenameProvider", document.uri, new vscode.Position(0, 8), name);
    await until(
      async () => (await renamed("Moored"))?.size > 0,
      () => "no name can be changed",
    );
    await vscode.workspace.applyEdit(await renamed("Moored"));
    equal(document.getText(), content.replaceAll("Bollard", "Moored"), `is now: ${document.getText()}`);
    const refusal = await renamed("Hawser").then(() => "nothing", String);
    equal(/already a drink/.test(refusal), true, `is refused with: ${refusal}`);
  },

  "what could stand at the cursor is offered": async () => {
    const content = "drink Untied\n  glass: none\n  50 ml ru";
    const document = await vscode.workspace.openTextDocument({ language: "mutchkin", content });
    await vscode.window.showTextDocument(document);
    const offered = async () => {
      const { items } = await vscode.commands.executeCommand(
        "vscode.executeCompletionItemProvider",
        document.uri,
        document.positionAt(content.length),
      );
      return items.map(({ label }) => label.label ?? label);
    };
    await until(
      async () => (await offered()).includes("rum"),
      () => "rum is not offered",
    );
  },

  "a riff is made by a command, from anywhere in the drink": async () => {
    const content = "drink Fender\n  glass: none\n  50 ml rum\n";
    const document = await vscode.workspace.openTextDocument({ language: "mutchkin", content });
    const editor = await vscode.window.showTextDocument(document);
    const place = new vscode.Position(2, 6);
    editor.selection = new vscode.Selection(place, place);
    await until(
      async () => {
        if (!/from: Fender/.test(document.getText())) await vscode.commands.executeCommand("mutchkin.makeRiff");
        return /drink Fender, \S+.*\n {2}from: Fender\n/.test(document.getText());
      },
      () => `the text is ${document.getText()}`,
    );
  },

  "a text is put in form": async () => {
    const document = await vscode.workspace.openTextDocument({ language: "mutchkin", content: "drink Untied\n     50ml rum ,frozen\n" });
    await vscode.window.showTextDocument(document);
    await until(
      async () => {
        await vscode.commands.executeCommand("editor.action.formatDocument");
        return document.getText() === "drink Untied\n  50 ml rum, frozen\n";
      },
      () => `the text is ${document.getText()}`,
    );
  },
};

/** Runs every check, tells the results to the launcher, and fails if one failed. */
exports.run = async () => {
  const checks = { ...(vscode.workspace.workspaceFolders?.length ? inFolder : {}), ...anywhere };
  const results = [];
  for (const [name, check] of Object.entries(checks)) {
    const started = Date.now();
    const failure = await Promise.race([check().then(() => undefined, String), late()]);
    results.push({ name, failure, milliseconds: Date.now() - started });
  }
  const report = JSON.stringify(results, null, 2);
  await tell(report);
  if (results.some(({ failure }) => failure)) throw new Error(report);
};

/** By the file that the launcher waits for; where there is no Node to name it, by the console. */
async function tell(report) {
  const file = globalThis.process?.env?.MUTCHKIN_SUITE_REPORT;
  if (file) await vscode.workspace.fs.writeFile(vscode.Uri.file(file), new TextEncoder().encode(report));
  else console.log(`suite report: ${report}`);
}

const openSours = () => openSpec("sours.drink");

async function openSpec(name) {
  const folder = vscode.workspace.workspaceFolders[0].uri;
  const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(folder, "specs", name));
  await vscode.window.showTextDocument(document);
  return document;
}

const findings = (document) => vscode.languages.getDiagnostics(document.uri);
const codeOf = ({ code }) => String(code?.value ?? code);

async function findingOn(document, words) {
  const found = () => findings(document).find((one) => document.getText(one.range).includes(words));
  await until(
    found,
    () =>
      `no finding on "${words}", only: ${
        findings(document)
          .map((one) => one.message)
          .join(" | ") || "none at all"
      }`,
  );
  return found();
}

async function hoverOn(document, word) {
  const place = document.positionAt(document.getText().indexOf(word) + 1);
  const hovers = await vscode.commands.executeCommand("vscode.executeHoverProvider", document.uri, place);
  return hovers.flatMap(({ contents }) => contents.map((part) => part.value ?? part)).join("\n");
}

/** Waits up to fifteen seconds for a thing to become true. */
async function until(isSo, orElse) {
  const end = Date.now() + 15_000;
  while (!(await isSo())) {
    if (Date.now() > end) throw new Error(typeof orElse === "string" ? orElse : orElse());
    await new Promise((resolve) => setTimeout(resolve, 30));
  }
}

const late = () => new Promise((resolve) => setTimeout(resolve, 60_000, "took longer than a minute"));

function equal(got, wanted, otherwise) {
  if (got !== wanted) throw new Error(otherwise);
}
