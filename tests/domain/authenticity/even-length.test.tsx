import { renderToString } from "react-dom/server";
import { expect, it } from "vitest";
import { StatusCard } from "@/app/(public)/authenticity/status-card.client";
import { packStatus, unpackStatus } from "@/lib/domain/authenticity/even-length";
import { PublicStanding, type PublicStatus } from "@/lib/domain/authenticity/public-status";

const token = "t".repeat(43);

const unknown: PublicStatus = {
  standing: "unknown",
  laboratory: "Laboratory “R & D's” <Grün>",
  number: "",
  issuedOn: "",
  serialEnd: "",
  endedOn: "",
  successor: null,
  predecessor: null,
  fileSha256: "",
  contentProof: "",
  logHash: "",
};

const known: PublicStatus = {
  ...unknown,
  number: "C-2026-0042",
  issuedOn: "2026-03-02",
  serialEnd: "417",
  fileSha256: "a".repeat(64),
  contentProof: "b".repeat(64),
  logHash: "c".repeat(64),
};

const next = {
  number: "C-2026-0043",
  address: `https://calibration.example/authenticity/${token}?a=1&b='2'`,
};

const all: readonly PublicStatus[] = [
  unknown,
  ...PublicStanding.options
    .filter((standing) => standing !== "unknown")
    .flatMap((standing) => [
      { ...known, standing },
      { ...known, standing, endedOn: "2026-04-01", successor: next, predecessor: next },
    ]),
];

const bytes = (text: string): number => new TextEncoder().encode(text).length;

it("writes every state with as many bytes, as words and as data", () => {
  expect(new Set(all.map((status) => bytes(renderToString(<StatusCard status={status} />)))).size).toBe(1);
  expect(new Set(all.map((status) => packStatus(status).length)).size).toBe(1);
  expect(renderToString(<StatusCard status={unknown} />)).toContain("Unknown");
  expect(renderToString(<StatusCard status={{ ...known, standing: "valid" }} />)).toContain("Valid");
});

it("is no verdict on a paper that is another one", () => {
  const shown = renderToString(<StatusCard status={{ ...known, standing: "valid" }} isPaperOther />);
  expect(shown).toContain("<strong>C-2026-0042 itself: valid</strong>");
  expect(shown).not.toContain('data-standing="valid"');
});

it("gives back what was packed", () => {
  for (const status of all) expect(unpackStatus(packStatus(status))).toEqual(status);
});
