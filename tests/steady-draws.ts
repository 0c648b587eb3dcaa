import fc from "fast-check";

/**
 * Generated inputs are the same in every run, so that a red run is somebody's change and not chance. To look for new
 * ones: `PROPERTY_SEED=random npm test`, or any whole number.
 */
const asked = process.env.PROPERTY_SEED;
if (asked !== "random") fc.configureGlobal({ seed: Number(asked ?? 20261125) });
