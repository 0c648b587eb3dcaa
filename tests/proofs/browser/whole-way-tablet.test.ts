import { describe, it } from "vitest";
import { drivenApp } from "#tests/browser/driven-app.ts";
import { walkTheWay } from "#tests/browser/walk-the-way.ts";

const driven = drivenApp();

describe("the whole way at 768 px, by keyboard alone", () => {
  it("from nothing to a proposal that the homeowner opens, with axe, standing still, without a foreign request", () =>
    walkTheWay(driven, { width: 768, hand: "keyboard", scheme: "dark" }));
});
