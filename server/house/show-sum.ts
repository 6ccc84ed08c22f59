/** The sum behind a figure in words. */
import type { Sum } from "./explain.ts";
import { showFigure, showList, showMoney, showShare } from "./show.ts";

export interface ShownSum {
  /** `14.6 ± 0.4 % vol = 17.5 g of alcohol ÷ …`; for an unknown figure why it is. */
  readonly said: string;
  /** `± mostly from how much egg white is poured (70 %)`; absent where nothing stands out. */
  readonly spread?: string;
}

export function showSum({
  figure,
  unit,
  result,
  working,
  doubts,
}: Pick<Sum, "figure" | "unit" | "result" | "working" | "doubts">): ShownSum {
  if (working === undefined) return { said: `unknown: ${(result.because ?? []).join("; ")}` };
  const shown =
    figure === "costPerServe" ? showMoney(result, unit || undefined) : unit === "%" ? showShare(result) : showFigure(result, unit);
  const spread = doubts.map(({ what, share }) => `${what} (${showShare(share)})`);
  return { said: `${shown} = ${working}`, ...(spread.length > 0 && { spread: `± mostly from ${showList(spread)}` }) };
}
