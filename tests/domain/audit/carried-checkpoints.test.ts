import { describe, expect, it } from "vitest";
import { type Carried, describeUnheld, firstUnheld } from "@/lib/domain/audit/carried-checkpoints";

const hash = (sequence: number): string => String(sequence).padStart(64, "0");
const carried = (sequence: number, found: string | null = hash(sequence)): Carried => ({
  certificate: `C-2026-${String(sequence).padStart(4, "0")}`,
  checkpoint: { sequence, hash: hash(sequence) },
  found,
});

describe("what certificates carry of the log", () => {
  it("is held by a log that only grew, and by none where no certificate carries any", () => {
    expect(firstUnheld([carried(3), carried(8), carried(8)])).toBeNull();
    expect(firstUnheld([])).toBeNull();
  });

  it("names the first one that is not held, and how far the log is as it was", () => {
    const other = "e".repeat(64);
    const unheld = firstUnheld([carried(21, other), carried(3), carried(13, other), carried(8)]);
    expect(unheld).toEqual({
      kind: "different",
      certificate: "C-2026-0013",
      sequence: 13,
      holdsUpTo: 8,
    });
    expect(describeUnheld(unheld!)).toMatch(
      /^The log was rewritten: its event 13 is not the one that certificate C-2026-0013 was signed over\. It holds up to event 8\. .*backup/,
    );
  });

  it("tells a log that ends too early from one that was rewritten", () => {
    const unheld = firstUnheld([carried(13, null)]);
    expect(unheld).toMatchObject({ kind: "missing", sequence: 13, holdsUpTo: null });
    const said = describeUnheld(unheld!);
    expect(said).toMatch(
      /^The log was cut or set back: it ends before event 13, which certificate C-2026-0013 .* restore a later one/,
    );
    expect(said).not.toContain("holds up to");
  });
});
