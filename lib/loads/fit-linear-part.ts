import type { BillColumns } from "./bill-columns.ts";
import type { BalanceTemperatures } from "./change-point-model.ts";

/** Least squares at fixed balance temperatures: use a day = base + slope × average degrees beyond the balance. */
export interface LinearPart {
  baseUsePerDay: number;
  heatingSlope: number;
  coolingSlope: number;
  /** Weighted sum of squared misses of the use a day. */
  squaredMisses: number;
}

type Column = readonly number[] | null;

/**
 * Least squares for base and slopes, slopes never negative: of the models with each subset of slopes at zero, the
 * best whose slopes are not negative.
 */
export function fitLinearPart(columns: BillColumns, { heatingF, coolingF }: BalanceTemperatures): LinearPart {
  return fitColumns(columns, {
    heating: heatingF === null ? null : columns.degrees("heating", heatingF),
    cooling: coolingF === null ? null : columns.degrees("cooling", coolingF),
  });
}

/** The same for degrees at hand. */
export function fitColumns(
  { usePerDay, weights }: Pick<BillColumns, "usePerDay" | "weights">,
  { heating, cooling }: { heating: Column; cooling: Column },
): LinearPart {
  let best = weightedFit({ usePerDay, weights, heating: null, cooling: null })!;
  const subsets: [Column, Column][] = [
    [heating, cooling],
    [heating, null],
    [null, cooling],
  ];
  for (const [first, second] of subsets) {
    if (first === null && second === null) continue;
    const fit = weightedFit({ usePerDay, weights, heating: first, cooling: second });
    if (fit !== null && fit.squaredMisses < best.squaredMisses) best = fit;
  }
  return best;
}

/** Null where a slope would be negative, or two columns say the same. */
function weightedFit({
  usePerDay,
  weights,
  heating,
  cooling,
}: Pick<BillColumns, "usePerDay" | "weights"> & { heating: Column; cooling: Column }): LinearPart | null {
  const n = usePerDay.length;
  const mean = (values: readonly number[]) => {
    let sum = 0;
    for (let i = 0; i < n; i += 1) sum += weights[i]! * values[i]!;
    return sum / n;
  };
  const middle = { y: mean(usePerDay), h: heating ? mean(heating) : 0, c: cooling ? mean(cooling) : 0 };
  const products = { hh: 0, cc: 0, hc: 0, hy: 0, cy: 0 };
  for (let i = 0; i < n; i += 1) {
    const w = weights[i]!;
    const y = usePerDay[i]! - middle.y;
    const h = heating ? heating[i]! - middle.h : 0;
    const c = cooling ? cooling[i]! - middle.c : 0;
    products.hh += w * h * h;
    products.cc += w * c * c;
    products.hc += w * h * c;
    products.hy += w * h * y;
    products.cy += w * c * y;
  }
  const slopes = slopesOf(products);
  if (slopes === null || slopes.heating < 0 || slopes.cooling < 0) return null;
  const baseUsePerDay = middle.y - slopes.heating * middle.h - slopes.cooling * middle.c;
  let squaredMisses = 0;
  for (let i = 0; i < n; i += 1) {
    const foretold = baseUsePerDay + slopes.heating * (heating?.[i] ?? 0) + slopes.cooling * (cooling?.[i] ?? 0);
    squaredMisses += weights[i]! * (usePerDay[i]! - foretold) ** 2;
  }
  return { baseUsePerDay, heatingSlope: slopes.heating, coolingSlope: slopes.cooling, squaredMisses };
}

/** The normal equations of at most two centered columns; a column that does not vary has no slope. */
function slopesOf({
  hh,
  cc,
  hc,
  hy,
  cy,
}: Readonly<Record<"hh" | "cc" | "hc" | "hy" | "cy", number>>): { heating: number; cooling: number } | null {
  if (!(hh > 0 && cc > 0)) return { heating: hh > 0 ? hy / hh : 0, cooling: cc > 0 ? cy / cc : 0 };
  const determinant = hh * cc - hc * hc;
  if (!(determinant > 1e-12 * hh * cc)) return null;
  return { heating: (hy * cc - cy * hc) / determinant, cooling: (cy * hh - hy * hc) / determinant };
}
