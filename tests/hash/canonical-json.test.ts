import canonicalize from "canonicalize";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalMembers, joinMembers } from "#lib/hash/canonical-members.ts";
import { isInCanonicalOrder } from "#lib/hash/canonical-order.ts";
import { canonicalJson, contentHash } from "#lib/hash/content-hash.ts";
import { sha256ByLibrary, textHash } from "#lib/hash/sha256.ts";

describe("canonical JSON", () => {
  /** RFC 8785 §3.2.2 and §3.2.3: the example object and its canonical form, as published. */
  it("is the published example of RFC 8785", () => {
    const sample: unknown = JSON.parse(
      String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
    );
    const text = canonicalJson(sample);
    expect(text.startsWith('{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],')).toBe(
      true,
    );
    expect(text.endsWith('"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}')).toBe(true);
  });

  /** FIPS 180-4, as printed in NIST's example for SHA-256 of "abc"; here of the JSON text of an empty record, by sha256sum. */
  it("hashes its UTF-8 text", () => {
    expect(contentHash({})).toBe("44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a");
  });

  it("of any value is what the reference package prints, whatever the order of the keys", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        expect(canonicalJson(value)).toBe(canonicalize(value));
        expect(canonicalJson(JSON.parse(canonicalJson(value)))).toBe(canonicalJson(value));
      }),
      { numRuns: 500 },
    );
  });

  it("takes the short way only where nothing has to be sorted or refused", () => {
    expect(isInCanonicalOrder({ a: [1, "x", null, true], b: {} })).toBe(true);
    for (const value of [{ b: 1, a: 2 }, { a: undefined }, [Number.NaN], ["\ud800"], new Date(0), { 2: 0, 10: 0 }])
      expect(isInCanonicalOrder(value)).toBe(false);
    expect(() => canonicalJson(["\ud800"])).toThrow();
    expect(() => canonicalJson({ a: Number.NaN })).toThrow();
  });

  it("of a record is its members' joined, and of a part of it those that are left", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ unit: "grapheme" }), fc.jsonValue({ maxDepth: 2 })), (record) => {
        const members = canonicalMembers(record);
        expect(joinMembers(members)).toBe(canonicalize(record));
        const [first] = Object.keys(record);
        const rest = Object.fromEntries(Object.entries(record).filter(([name]) => name !== first));
        expect(joinMembers(members.filter(([name]) => name !== first))).toBe(canonicalize(rest));
      }),
      { numRuns: 300 },
    );
    expect(joinMembers(canonicalMembers({ b: 1, a: undefined }))).toBe('{"b":1}');
  });

  /** On the server the platform hashes, in a browser the library: two implementations of FIPS 180-4 that know nothing of each other. */
  it("is hashed alike by the platform and by the library, whatever the text and its length", () => {
    expect(globalThis.process.getBuiltinModule?.("node:crypto").hash).toBeTypeOf("function");
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 300 }), (text) => {
        expect(textHash(text)).toBe(sha256ByLibrary(text));
      }),
      { numRuns: 500 },
    );
  });
});
