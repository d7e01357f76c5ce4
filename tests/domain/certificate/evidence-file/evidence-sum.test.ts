import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { evidenceSum, readEvidenceSum } from "@/lib/domain/certificate/evidence-file/evidence-sum";
import { temporaryFolder } from "../../../support/temporary-folder";

const sum = createHash("sha256").update("invented evidence\n").digest("hex");

it("is read back, and nothing else is taken for one", () => {
  expect(readEvidenceSum(evidenceSum("C-2026-0001", sum))).toBe(sum);
  for (const other of ["", sum, `${sum}  C-2026-0001.pdf\n`, evidenceSum("C-2026-0001", sum.toUpperCase())])
    expect(readEvidenceSum(other), other).toBeNull();
});

// GNU coreutils, which is part of every Debian.
it("is what sha256sum checks the customer's download by", () => {
  const folder = temporaryFolder();
  writeFileSync(path.join(folder, "C-2026-0001-evidence.json"), "invented evidence\n");
  writeFileSync(path.join(folder, "evidence.sha256"), evidenceSum("C-2026-0001", sum));
  const said = execFileSync("sha256sum", ["-c", "evidence.sha256"], { cwd: folder, encoding: "utf8" });
  expect(said).toBe("C-2026-0001-evidence.json: OK\n");
});
