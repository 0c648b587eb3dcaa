/** Leakage of one system while it runs, by place: what the distribution kernel needs. */
export interface LeakState {
  /** To the zone around the duct, operating cfm, by place. */
  readonly supplyToZone: Float64Array;
  readonly returnToZone: Float64Array;
  /** All leakage of a side, also into the rooms: what the blower sees. */
  supplyAllCfm: number;
  returnAllCfm: number;
  /** The part that reaches outside: what drives infiltration. */
  supplyOutsideCfm: number;
  returnOutsideCfm: number;
}

export function createLeakState(placesCount: number): LeakState {
  return {
    supplyToZone: new Float64Array(placesCount),
    returnToZone: new Float64Array(placesCount),
    supplyAllCfm: 0,
    returnAllCfm: 0,
    supplyOutsideCfm: 0,
    returnOutsideCfm: 0,
  };
}

export function clearLeakState(state: LeakState): void {
  state.supplyToZone.fill(0);
  state.returnToZone.fill(0);
  state.supplyAllCfm = 0;
  state.returnAllCfm = 0;
  state.supplyOutsideCfm = 0;
  state.returnOutsideCfm = 0;
}

/** Scales each side to what passes in all, every place alike. */
export function scaleLeaks(state: LeakState, supplyAllCfm: number, returnAllCfm: number): void {
  const supply = state.supplyAllCfm > 0 ? supplyAllCfm / state.supplyAllCfm : 0;
  const back = state.returnAllCfm > 0 ? returnAllCfm / state.returnAllCfm : 0;
  for (let p = 0; p < state.supplyToZone.length; p++) {
    state.supplyToZone[p]! *= supply;
    state.returnToZone[p]! *= back;
  }
  state.supplyAllCfm = supplyAllCfm;
  state.returnAllCfm = returnAllCfm;
  state.supplyOutsideCfm *= supply;
  state.returnOutsideCfm *= back;
}
