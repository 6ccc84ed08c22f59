/**
 * How far below 0 °C a liquid starts to freeze.
 *
 * Each solute's depression is taken against the water alone and they are added. The fits are this
 * file's own, to check points of the CRC Handbook of Chemistry and Physics, 102nd ed., table
 * "Concentrative Properties of Aqueous Solutions". Worst error against those points:
 *
 * | solute | range, % mass | worst, K |
 * | --- | --- | --- |
 * | ethanol | 0…30 (0…68) | 0.14 (0.38) |
 * | sucrose, maltose, lactose | 0…42 | 0.03 |
 * | glucose, fructose | 0…30 | 0.09 |
 * | citric acid | 0…30 | 0.07 |
 * | sodium chloride | 0…23 | 0.02 |
 *
 * Lactic, acetic and phosphoric acid enter as the moles of citric acid that do the same: within 0.1 K to
 * 10 % mass. That depressions add is itself an approximation; no published figures for three-part
 * mixtures were at hand.
 *
 * Beyond the ranges every fit goes on rising: ethanol towards 70 K, the others without bound.
 */

/**
 * Depression in K (positive) for grams of ethanol and moles of the rest per gram of water; any value
 * ≥ 0. Moles of salt are of
 * formula units; moles of acid as counted by `substances.ts`.
 */
export function freezingDepression(
  ethanolGPerG: number,
  monosaccharideMolPerKg: number,
  disaccharideMolPerKg: number,
  acidMolPerKg: number,
  saltMolPerKg: number,
): number {
  const r = ethanolGPerG;
  const m = monosaccharideMolPerKg;
  const d = disaccharideMolPerKg;
  const s = saltMolPerKg;
  return (
    (r * (42.20798 + r * (-95.73751 + r * 513.9258))) / (1 + r * (-1.122864 + r * (4.980365 + r * 7.384834))) +
    m * (1.83763 + m * 0.0696528) +
    d * (1.82123 + d * 0.2349973) +
    acidMolPerKg * 1.93 +
    s * (3.350758 + s * (0.01063448 + s * 0.02450503))
  );
}
