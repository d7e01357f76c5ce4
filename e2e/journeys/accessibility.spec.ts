import type { Page } from "@playwright/test";
import { violationsInBoth } from "../axe";
import { expect, test } from "../fixtures";
import { signIn } from "../sign-in";

const routes: Readonly<Record<string, readonly string[]>> = {
  "quality-manager": [
    "/",
    "/board",
    "/board/hours",
    "/search?q=s",
    "/orders",
    "/orders?show=all&only=late",
    "/customers",
    "/sensors",
    "/runs",
    "/certificates",
    "/certificates/C-2026-0001",
    "/standards",
    "/standards?show=not-to-be-used",
    "/standards/new?kind=lead",
    "/standards/policy",
    "/standards/REF-S-02",
    "/standards/REF-S-02/edit",
    "/standards/REF-S-02/health",
    "/standards/REF-S-02/status",
    "/standards/REF-S-11/status",
    "/standards/REF-S-02/logbook/new?kind=anneal",
    "/standards/PRT-01?ohm=101",
    "/standards/FUR-01",
    "/furnaces",
    "/trace",
    "/audit",
    "/mail",
    "/staff",
    "/staff/access",
    "/laboratory",
    "/laboratory/programs",
    "/laboratory/seal",
    "/providers",
    "/providers/new",
    "/holds",
    "/storage",
    "/quality?state=all&kind=all",
    "/quality/new",
    "/scope",
    "/scope/new?form=table",
    "/prices",
    "/shipments",
    "/invoicing",
    "/procedures",
    "/procedures/new",
    "/procedures/simulated-furnace",
    "/procedures/tube-furnace/draft",
    "/account",
  ],
  "front-desk": ["/", "/orders/new", "/customers/new"],
  technician: ["/", "/runs/new", "/furnaces/inhomogeneity"],
  signatory: ["/", "/review", "/review/R-2026-0001", "/review/R-2026-0001/T-000004/1"],
  customer: [
    "/portal",
    "/portal/request",
    "/portal/orders",
    "/portal/certificates",
    "/portal/sensors",
    "/portal/colleagues",
    "/portal/addresses",
    "/portal/complaints",
    "/portal/programs",
  ],
};

/** Pages whose address the demonstration makes: a furnace, what is planned, surveyed and recorded of it. */
const furnacePages = async (page: Page): Promise<string[]> => {
  const hrefOf = async (name: RegExp | string): Promise<string> =>
    (await page.getByRole("link", { name }).first().getAttribute("href")) ?? "";
  await page.goto("/furnaces");
  const furnace = await hrefOf(/^FUR-01/);
  await page.goto(furnace);
  const surveyed = await hrefOf("Its surveys");
  const begun = await page
    .locator("li", { hasText: "Being measured" })
    .getByRole("link", { name: /^CH-/ })
    .first()
    .getAttribute("href");
  const surveys = ["axial", "positions", "stability", "immersion"].map(
    (kind) => `${begun}/survey?kind=${kind}&celsius=700`,
  );
  const made = ["edit", "configurations/new", "characterisations/new"].map((path) => `${furnace}/${path}`);
  return [furnace, surveyed, `${begun}`, ...surveys, ...made];
};

/** The chain of a certificate and of a standard that it names, and what its signatory may answer for. */
const chainPages = async (page: Page): Promise<string[]> => {
  await page.goto("/trace");
  const chain = await page
    .getByRole("link", { name: /^C-\d{4}-0001$/ })
    .first()
    .getAttribute("href");
  await page.goto("/staff");
  const person = await page.getByRole("link", { name: "Odile Marchetti" }).getAttribute("href");
  return [`${chain}`, "/trace/standard/REF-S-01", `${person}/authorisations`];
};

/** Offer, promise, return and repetition of an order with finished sensors. */
const commercePages = async (page: Page): Promise<string[]> => {
  await page.goto("/shipments");
  const ship = await page.getByRole("main").getByRole("link", { name: /^O-/ }).first().getAttribute("href");
  return ["ship", "quotation", "promise", "repeat"].map((what) => `${ship}`.replace(/ship$/, what));
};

/** The certificate that is read as a page. */
const readAsPage = async (page: Page): Promise<string[]> => {
  await page.goto("/portal/certificates");
  return [`${await page.getByRole("link", { name: "read it as a page" }).first().getAttribute("href")}`];
};

const morePages: Readonly<Record<string, (page: Page) => Promise<string[]>>> = {
  technician: furnacePages,
  "front-desk": commercePages,
  "quality-manager": chainPages,
  customer: readAsPage,
};

for (const [role, paths] of Object.entries(routes))
  test(`axe finds nothing for the ${role} in light and dark, and no page scrolls sideways at 320 px`, async ({
    browser,
    baseURL,
    signIns,
  }) => {
    // Half a hundred pages, beside all else that runs.
    const context = await browser.newContext({ bypassCSP: true, reducedMotion: "reduce", baseURL });
    const page = await context.newPage();
    const person = signIns.find((candidate) => candidate.role.toLowerCase().includes(role));
    if (person === undefined) throw new Error(`The demo laboratory has no ${role}.`);
    await signIn(page, person);
    const found: string[] = [];
    const more = (await morePages[role]?.(page)) ?? [];
    for (const path of [...paths, ...more]) {
      await page.setViewportSize({ width: 1440, height: 900 });
      // A page that is not there has nothing for axe to find.
      if (!(await page.goto(path))?.ok()) found.push(`${path} is not there`);
      found.push(...(await violationsInBoth(page)).map((text) => `${path} ${text}`));
      await page.setViewportSize({ width: 320, height: 640 });
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      if (wide > 320) found.push(`${path} is ${wide} px wide at 320 px`);
    }
    await context.close();
    expect(found).toEqual([]);
  });
