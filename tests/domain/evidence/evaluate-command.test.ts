import { execFile } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import s5 from "@/lib/domain/evidence/examples/ea4-02-s5.json";

const root = path.resolve(import.meta.dirname, "../../..");
const s5File = path.join(root, "lib/domain/evidence/examples/ea4-02-s5.json");
const folder = mkdtempSync(path.join(tmpdir(), "emfolio-evaluate-"));

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function write(name: string, content: string | Uint8Array): string {
  const file = path.join(folder, name);
  writeFileSync(file, content);
  return file;
}

type Ended = { readonly code: number; readonly stdout: string; readonly stderr: string };

function command(...parameters: string[]): Promise<Ended> {
  return new Promise((resolve) => {
    const script = path.join(root, "lib/commands/evaluate.ts");
    const options = { cwd: root, maxBuffer: 64 * 1024 * 1024 };
    // What the script of package.json comes to, without the process that tsx would start it from.
    const program = ["--import", "tsx", script, ...parameters];
    execFile(process.execPath, program, options, (error, stdout, stderr) => {
      resolve({ code: typeof error?.code === "number" ? error.code : 0, stdout, stderr });
    });
  });
}

describe("the evaluate command", () => {
  it("prints S5, unrounded and as printed, and several files, a byte-order mark among them", async () => {
    const digits = { ...s5, rounding: { uncertaintyDigits: 2 } };
    const other = write("two-digits.json", `\ufeff${JSON.stringify(digits)}`);
    const { code, stdout, stderr } = await command(s5File, other);
    expect([code, stderr]).toEqual([0, ""]);
    const { files } = JSON.parse(stdout);
    expect(files.map(({ file }: { file: string }) => file)).toEqual([s5File, other]);
    const [point] = files[0].points;
    expect(point.emfAtNominalMicrovolt).toBeCloseTo(36228.77, 2);
    expect(point.printed.emfMicrovolt).toBe("36\u202f230");
    expect(point.temperatureBudget.contributions[0].key).toBe("reference.repeatability");
    expect(files[1].points[0].printed.emfMicrovolt).toBe("36\u202f229");
  });

  it("validates each point by Monte Carlo when asked", async () => {
    const { code, stdout } = await command(s5File, "--monte-carlo", "50000", "--seed", "7");
    expect(code).toBe(0);
    const [point] = JSON.parse(stdout).files[0].points;
    expect(point.monteCarlo).toMatchObject({ trials: 50_000, seed: 7, stream: 0, isSettled: true });
    // The furnace's rectangle dominates S5: 95.45 % of the trials lie within less than k = 2 says.
    expect(point.monteCarlo.expandedMicrovolt).toBeGreaterThan(45);
    expect(point.monteCarlo.expandedMicrovolt).toBeLessThan(47);
    expect(point.monteCarlo.gum.isValid).toBe(false);
  });

  const broken: readonly (readonly [name: string, file: () => string, path: string, says: RegExp])[] = [
    ["a file that is not there", () => path.join(folder, "none.json"), "", /no such file/],
    ["a folder", () => folder, "", /folder/],
    ["an empty file", () => write("empty.json", ""), "", /empty/],
    ["text that is not JSON", () => write("text.json", "channel;µV\n1;2"), "", /not JSON/],
    ["JSON cut short", () => write("cut.json", JSON.stringify(s5).slice(0, 700)), "", /not JSON/],
    [
      "a binary file",
      () => write("binary.json", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0xff, 0xfe, 0)),
      "",
      /not UTF-8/,
    ],
    ["other JSON", () => write("other.json", "[1, 2]"), "", /expected object/],
    [
      "evidence with a fault",
      () =>
        write(
          "fault.json",
          JSON.stringify({ ...s5, references: [{ ...s5.references[0], deviations: [] }, s5.references[1]] }),
        ),
      "references[0].deviations",
      /./,
    ],
  ];

  it("refuses each on one line with its place, prints nothing of a good one beside them, and exits 2", async () => {
    const files = broken.map(([, file]) => file());
    const { code, stdout, stderr } = await command(s5File, ...files);
    expect([code, stdout]).toEqual([2, ""]);
    const lines = stderr
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(lines).toHaveLength(broken.length);
    for (const [at, [, , place, says]] of broken.entries()) {
      expect(lines[at]).toMatchObject({ file: files[at], path: place });
      expect(lines[at].message).toMatch(says);
    }
  });

  it("prints the JSON Schema and the help", async () => {
    const [schema, help] = await Promise.all([command("--schema"), command("--help")]);
    expect(JSON.parse(schema.stdout).title).toContain("evidence file, version 2");
    expect([help.code, schema.code]).toEqual([0, 0]);
    expect(help.stdout).toContain("npm run --silent evaluate -- FILE.json");
  });

  it("refuses no file and an unknown option", async () => {
    for (const parameters of [[], ["--everything"]]) {
      const { code, stderr } = await command(...parameters);
      expect(code).toBe(2);
      expect(JSON.parse(stderr).message).toContain("see --help");
    }
  });
});
