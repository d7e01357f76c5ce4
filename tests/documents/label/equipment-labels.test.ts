import { describe, expect, it } from "vitest";
import { type EquipmentLabel, equipmentLabels } from "@/lib/documents/label/equipment-labels";
import { codePath } from "@/lib/drawing/code-path";
import { pdfPages } from "../../support/pdf-text";
import { readQr } from "../../support/read-qr";

const printedAt = new Date("2026-03-04T09:12:00Z");
const label = (tag: string, dueOn: string | null, origin = "https://lab.example"): EquipmentLabel => ({
  tag,
  serial: "70418",
  kind: "Voltmeter",
  dueOn,
  address: `${origin}/standards/${encodeURIComponent(tag)}/status`,
});

describe("labels of equipment", () => {
  it("carry tag, serial and due day, one page of 50 by 25 mm each, the same bytes each time", async () => {
    const labels = [label("VM-01", "2027-02-18"), label("W".repeat(40), null)];
    const bytes = await equipmentLabels(labels, printedAt);
    const [first, second] = await pdfPages(bytes);
    expect(first).toContain("VM-01");
    expect(first).toContain("2027-02-18");
    expect(first).toContain("No. 70418");
    // A long tag is broken without adding a hyphen of ours.
    expect(second?.replace(/\s/g, "")).toContain("W".repeat(40));
    expect(second).toContain("see the code");
    const boxes = [
      ...Buffer.from(bytes)
        .toString("latin1")
        .matchAll(/\/MediaBox \[([^\]]+)\]/g),
    ];
    expect(boxes).toHaveLength(2);
    for (const [, box] of boxes) {
      const [, , width = 0, height = 0] = box!.trim().split(/\s+/).map(Number);
      expect(width).toBeCloseTo((50 * 72) / 25.4, 1);
      expect(height).toBeCloseTo((25 * 72) / 25.4, 1);
    }
    expect(Buffer.compare(bytes, await equipmentLabels(labels, printedAt))).toBe(0);
  });

  it("say nothing of the state, which changes: the code leads to it", async () => {
    const { address } = label("REF-S-01", null);
    const { modules, path } = codePath(address);
    const dark = new Set<string>();
    for (const [, column, row, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
      for (let at = 0; at < Number(width); at += 1) dark.add(`${row} ${Number(column) + at}`);
    expect(readQr((row, column) => dark.has(`${row} ${column}`), modules)).toBe(
      "https://lab.example/standards/REF-S-01/status",
    );
  });

  it("are refused where the address is too long to be read from them", async () => {
    const long = label("VM-01", null, `https://${"long-".repeat(20)}name.example`);
    await expect(equipmentLabels([long], printedAt)).rejects.toThrow("too long");
  });
});
