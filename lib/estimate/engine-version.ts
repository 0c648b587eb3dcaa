/** Version of the calculation. It changes with any change of a number, so that an old claim knows what made it. */
export const ENGINE_VERSION = "1.7.0";
