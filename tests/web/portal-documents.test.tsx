import { AppRouterContext } from "next/dist/shared/lib/app-router-context.shared-runtime";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { CertificateChoice } from "@/app/(portal)/portal/certificate-choice";
import { SensorList } from "@/app/(portal)/portal/orders/[number]/sensor-list";
import type { Standing } from "@/lib/domain/certificate/standing";

/** A page that is still being made answers with a bare sentence: nothing leads there. */

const certificateAs = (standing: Standing) => ({
  ...{ number: "C-1", token: "t", href: "/api/certificates/t", standing },
  ...{ serial: "S-1", others: 0, tag: "T-1", typeLetter: "K", order: "O-1", purchaseOrder: "" },
  ...{ issuedOn: "2026-03-02", from: "100 °C", to: "300 °C", follows: null },
});

const sensorAs = (standing: Standing) => ({
  ...{ tag: "T-1", serial: "S-1", typeLetter: "K", state: "issued", where: "Done", remark: "" },
  ...{ external: null, certificates: [certificateAs(standing)] },
});

const router = {} as NonNullable<Parameters<typeof AppRouterContext.Provider>[0]["value"]>;
const shownAs = (standing: Standing): readonly string[] =>
  [
    <CertificateChoice key="choice" certificates={[certificateAs(standing)]} />,
    <SensorList key="list" sensors={[sensorAs(standing)]} parts={[]} />,
  ].map((element) =>
    renderToStaticMarkup(<AppRouterContext.Provider value={router}>{element}</AppRouterContext.Provider>),
  );

const page = 'href="/api/certificates/t/html"';
const unmade = { kind: "withdrawn", reason: "x", at: "2026-03-02T09:00:00Z", isUnmade: true } as const;

describe("a certificate in the portal", () => {
  it("leads to its page once its document is there", () => {
    for (const shown of shownAs({ kind: "valid" })) expect(shown).toContain(page);
  });

  it("is said to be being made before, and leads nowhere", () => {
    for (const shown of shownAs({ kind: "pending" })) {
      expect(shown).toContain("being made");
      expect(shown).not.toContain(page);
      expect(shown).not.toContain("Download C-1");
    }
  });

  it("leads nowhere where it ended before its document was made", () => {
    for (const shown of shownAs(unmade)) expect(shown).not.toContain(page);
  });
});
