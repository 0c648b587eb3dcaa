const SURROGATE = /[\uD800-\uDFFF]/;

/**
 * Whether JSON.stringify prints this value in its RFC 8785 form as it stands: plain records with their keys in order of
 * UTF-16 code units, lists, finite numbers and plain texts. What was read from a canonical text is, and needs no sorting.
 * A doubtful value (surrogates, undefined, objects that print themselves) is "no", never an error.
 */
export function isInCanonicalOrder(value: unknown): boolean {
  switch (typeof value) {
    case "string":
      return !SURROGATE.test(value);
    case "number":
      return Number.isFinite(value);
    case "boolean":
      return true;
    case "object":
      return value === null || (Array.isArray(value) ? value.every(isInCanonicalOrder) : isRecordInOrder(value));
    default:
      return false;
  }
}

function isRecordInOrder(record: object): boolean {
  if (Object.getPrototypeOf(record) !== Object.prototype || "toJSON" in record) return false;
  let last: string | undefined;
  // The order of the keys is the one in which JSON.stringify prints them, number-like keys first.
  for (const [key, each] of Object.entries(record)) {
    if ((last !== undefined && key <= last) || SURROGATE.test(key) || !isInCanonicalOrder(each)) return false;
    last = key;
  }
  return true;
}
