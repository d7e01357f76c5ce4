import { describe, expect, it } from "vitest";
import { certificateLines } from "@/lib/domain/gate/certificate-lines";
import type { StoredRow } from "@/lib/domain/gate/stored-outcome";

const places = [
  { kind: "reference", tag: null, place: "R1", channel: "101" },
  { kind: "sensor", tag: "T-1", place: "1", channel: "102" },
  { kind: "sensor", tag: "T-2", place: "2", channel: "1" },
];
const row = (more: Partial<StoredRow>): StoredRow => ({
  heading: "metal",
  code: "used-base-metal",
  severity: "overridable",
  subjects: ["T-1", "T-2"],
  reason: "used base metal.",
  remedy: "",
  source: "a source",
  given: "Agreed by N. North.",
  reachesCertificate: true,
  ...more,
});
const of = (more: Partial<StoredRow>, tag = "T-1") => certificateLines([row(more)], places, tag);

describe("what the gate leaves on a certificate", () => {
  it("names what was said of this sensor, and never another's", () => {
    expect(of({})).toEqual(["Used base metal. Accepted: Agreed by N. North."]);
    expect(of({ subjects: ["T-2"] })).toEqual([]);
    expect(of({ subjects: ["T-2"] }, "T-2")).toHaveLength(1);
  });

  it("is silent on what has no reason, or whose reason stays in the record", () => {
    expect(of({ given: null })).toEqual([]);
    expect(of({ reachesCertificate: false })).toEqual([]);
  });

  it("names references, junctions and the whole run to every sensor", () => {
    expect(of({ subjects: [], reason: "No voltage check point is recorded today." })).toEqual([
      "No voltage check point is recorded today. Accepted: Agreed by N. North.",
    ]);
    expect(of({ subjects: ["ICE-1", "T-2"] })).toEqual([
      "ICE-1: used base metal. Accepted: Agreed by N. North.",
    ]);
  });

  it("tells a place from a channel of the same name", () => {
    expect(of({ code: "tips-warmed", subjects: ["1"] })).toHaveLength(1);
    expect(of({ code: "tips-warmed", subjects: ["2"] })).toEqual([]);
    // Channel 1 is the other sensor's.
    expect(of({ code: "channel-zero", subjects: ["1"] })).toEqual([]);
    expect(of({ code: "channel-zero", subjects: ["101"] })).toEqual([
      "Channel 101: used base metal. Accepted: Agreed by N. North.",
    ]);
  });
});
