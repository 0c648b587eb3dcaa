import { describe, expect, it } from "vitest";
import { faultsOfPaper } from "#tests/documents/page-faults.ts";
import { EXAMPLE_FILES } from "#tests/estimate/example-jobs.ts";

describe.each(EXAMPLE_FILES)("every paper of %s", (file) => {
  it("leaves no heading behind and no last page with a line or two, on both papers in both languages", {
    timeout: 120_000,
  }, async () => {
    const kinds = ["proposal", "crew sheet", "retest sheet"] as const;
    const found: string[] = [];
    for (const paper of ["letter", "a4"] as const)
      for (const language of ["en", "es"] as const)
        for (const kind of [...kinds, ...(file.includes("retest") ? (["certificate"] as const) : [])])
          found.push(...(await faultsOfPaper(file, kind, { paper, language })));
    expect(found).toEqual([]);
  });
});
