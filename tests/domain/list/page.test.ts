import { describe, expect, it } from "vitest";
import { countedUpTo, countText, cutPage, cutSorted, shortCount, turnOf } from "@/lib/domain/list/page";
import { addressOf, changed, dayField, oneOf, readQuery, textField } from "@/lib/domain/list/query";

const name = (row: string) => row;

describe("a page", () => {
  it("knows its neighbours from one row more than it shows", () => {
    expect(cutPage(["e", "d", "c"], turnOf({}), name, 2)).toEqual({
      rows: ["e", "d"],
      next: "d",
      previous: null,
    });
    const after = turnOf({ after: "d" });
    expect(cutPage(["c", "b"], after, name, 2)).toEqual({ rows: ["c", "b"], next: null, previous: "c" });
    expect(cutPage([], after, name, 2)).toEqual({ rows: [], next: null, previous: null });
  });

  it("before an anchor is read backwards and turned round", () => {
    const before = turnOf({ before: "b" });
    expect(cutPage(["c", "d", "e"], before, name, 2)).toEqual({ rows: ["d", "c"], next: "c", previous: "d" });
    expect(cutPage(["d", "e"], before, name, 2)).toEqual({ rows: ["e", "d"], next: "d", previous: null });
  });

  it("of rows that are all there is the same page, there and back; a lost anchor begins anew", () => {
    const rows = ["e", "d", "c", "b", "a"];
    const first = { rows: ["e", "d"], next: "d", previous: null };
    expect(cutSorted(rows, turnOf({}), name, 2)).toEqual(first);
    expect(cutSorted(rows, turnOf({ after: "d" }), name, 2)).toEqual({
      rows: ["c", "b"],
      next: "b",
      previous: "c",
    });
    expect(cutSorted(rows, turnOf({ after: "b" }), name, 2)).toEqual({
      rows: ["a"],
      next: null,
      previous: "a",
    });
    expect(cutSorted(rows, turnOf({ before: "a" }), name, 2)).toEqual({
      rows: ["c", "b"],
      next: "b",
      previous: "c",
    });
    expect(cutSorted(rows, turnOf({ before: "c" }), name, 2)).toEqual(first);
    expect(cutSorted(rows, turnOf({ before: "e" }), name, 2)).toEqual({
      rows: [],
      next: null,
      previous: null,
    });
    for (const lost of [turnOf({ after: "x" }), turnOf({ before: "x" })])
      expect(cutSorted(rows, lost, name, 2)).toEqual(first);
  });

  it("is counted to a limit", () => {
    expect([countText(3), countText(countedUpTo), countText(countedUpTo + 1)]).toEqual([
      "3",
      "500",
      "more than 500",
    ]);
    expect([shortCount(500), shortCount(501)]).toEqual(["500", "500+"]);
  });
});

describe("an address", () => {
  const fields = { show: oneOf(["open", "all"]), from: dayField, q: textField } as const;

  it("says only what could be a filter", () => {
    expect(readQuery(fields, { show: "all", from: "2026-02-28", q: " a b ", x: "1" })).toEqual({
      show: "all",
      from: "2026-02-28",
      q: "a b",
    });
    expect(readQuery(fields, { show: "al", from: "2026-02-30", q: "a\u0000b" })).toEqual({});
    expect(readQuery(fields, { show: ["all", "open"], q: "x".repeat(121) })).toEqual({});
  });

  it("keeps the other filters and begins at the first page when one changes", () => {
    const query = { show: "all", after: "O-1", before: undefined };
    expect(addressOf("/orders", changed(query, { q: "a&b" }))).toBe("/orders?show=all&q=a%26b");
    expect(addressOf("/orders", changed(query, { show: undefined }))).toBe("/orders");
  });
});
