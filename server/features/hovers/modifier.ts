/** A word behind a pour's name that means something. */
import { modifiers } from "../../house/modifiers.ts";
import type { Settings } from "../../house/settings.ts";
import { showTemperature } from "../../house/show.ts";
import { asText, bold, paragraphs } from "../markdown.ts";

/** Absent for a note. Without settings how cold or hot that is here is left to whoever says it anyway. */
export function describeModifier(text: string, settings?: Settings): string | undefined {
  const modifier = modifiers.find(({ word }) => word === text.toLowerCase());
  const setting = settings && { frozen: settings.freezerC, chilled: settings.fridgeC, hot: settings.hotC }[text.toLowerCase()];
  return (
    modifier &&
    paragraphs(`${bold(modifier.word)} · ${modifier.doc}`, setting && `Here: ${showTemperature(setting.value)}, ${asText(setting.why)}.`)
  );
}
