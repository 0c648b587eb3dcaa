import type { Assumption, TraceStep, Warning } from "#lib/job/result/evidence-result.ts";
import type { Citation } from "#lib/sources/source.ts";

/** A default with its reason, ready to be listed. */
export interface DefaultValue<Value extends number | string | boolean> {
  path: string;
  title: string;
  value: Value;
  unit: string;
  reason: string;
  source: Citation;
  low?: number;
  high?: number;
}

/** Where the estimate writes down what it assumed, what it doubts and how it calculated. */
export interface Ledger {
  readonly assumptions: Assumption[];
  readonly warnings: Warning[];
  readonly trace: TraceStep[];
  /** Takes what was told; where nothing was, takes the default and lists it. */
  take<Value extends number | string | boolean>(told: Value | undefined, fallback: DefaultValue<Value>): Value;
  warn(warning: Warning): void;
  step(step: TraceStep): void;
}

export function createLedger(): Ledger {
  const assumptions: Assumption[] = [];
  const warnings: Warning[] = [];
  const trace: TraceStep[] = [];
  const seen = new Set<string>();
  return {
    assumptions,
    warnings,
    trace,
    take(told, fallback) {
      if (told !== undefined) return told;
      if (!seen.has(fallback.path)) {
        seen.add(fallback.path);
        assumptions.push({ ...fallback });
      }
      return fallback.value;
    },
    warn(warning) {
      warnings.push(warning);
    },
    step(step) {
      trace.push(step);
    },
  };
}
