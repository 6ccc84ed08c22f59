/** How the server is doing, in the language's corner of the status bar. */
import * as vscode from "vscode";
import { State } from "vscode-languageclient";

export interface ServerStatus extends vscode.Disposable {
  set(state: State): void;
}

export function showStatus(documents: vscode.DocumentSelector): ServerStatus {
  const item = vscode.languages.createLanguageStatusItem("mutchkin.server", documents);
  item.name = "Mutchkin";
  const set = (state: State) => {
    const { text, severity, busy, command } = looks[state];
    item.text = text;
    item.severity = severity;
    item.busy = busy ?? false;
    item.command = command;
  };
  set(State.Stopped);
  return { set, dispose: () => item.dispose() };
}

interface Look {
  readonly text: string;
  readonly severity: vscode.LanguageStatusSeverity;
  readonly busy?: boolean;
  readonly command: vscode.Command;
}

const showOutput = { title: "Show the Output", command: "mutchkin.showOutput" };
const startServer = { title: "Start the Server", command: "mutchkin.startServer" };
const { Information, Warning, Error: Failure } = vscode.LanguageStatusSeverity;

const looks: Readonly<Record<State, Look>> = {
  [State.Starting]: { text: "Mutchkin is starting", severity: Information, busy: true, command: showOutput },
  [State.Running]: { text: "Mutchkin is checking specs", severity: Information, command: showOutput },
  [State.Stopped]: { text: "Mutchkin is stopped", severity: Warning, command: startServer },
  [State.StartFailed]: { text: "Mutchkin did not start", severity: Failure, command: startServer },
};
