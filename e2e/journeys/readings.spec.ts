import { expect, test } from "../fixtures";
import { passGate } from "../pass-gate";

/** What a scanner's file can be wrong in, as a technician meets it. `tests/files` has every case. */
const refused: readonly (readonly [name: string, bytes: Buffer, told: RegExp])[] = [
  ["empty.csv", Buffer.alloc(0), /empty/i],
  ["picture.csv", Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]), /not text|binary/i],
  ["degrees.csv", Buffer.from("time_s,channel,emf_C\n0,101,300\n"), /line 1|column/i],
  ["word.csv", Buffer.from("time_s,channel,emf_uV\n0,101,12.5\n10,101,abc\n"), /line 3/i],
  ["stranger.csv", Buffer.from("time_s,channel,emf_uV\n0,999,12.5\n"), /999/],
  ["back.csv", Buffer.from("time_s,channel,emf_uV\n10,101,1\n5,101,2\n"), /line 3/i],
];

test("a readings file that does not hold is refused with its place, and nothing is stored", async ({
  page,
  signInAs,
  broughtAbout,
}) => {
  broughtAbout.push(/status of 4(00|22)/);
  await signInAs("technician");
  const main = page.getByRole("main");
  await page.goto("/runs/new");
  await page.getByLabel(/^T-/).last().check();
  for (const tag of ["REF-S-01", "REF-S-02"]) await page.getByLabel(tag, { exact: true }).check();
  await page.getByRole("button", { name: "Place them" }).click();
  await page.getByRole("button", { name: "Make the run" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Run R-");
  const run = ((await page.getByRole("heading", { level: 1 }).textContent()) ?? "").replace("Run ", "");
  // Before its gate a run offers no way in; whoever sends a file all the same is told why.
  await page.goto(`/runs/${run}/readings`);
  await expect(main).toContainText("this run has not passed its gate");
  await expect(page.getByLabel("Readings file")).toHaveCount(0);
  const good = "\uFEFFtime_s;channel;emf_uV\r\n0;101;1000,5\r\n10;101;1000,6\r\n";
  const sent = await page.request.post(`/api/runs/${run}/readings`, {
    data: Buffer.from(good),
    headers: { origin: new URL(page.url()).origin, "content-type": "text/csv" },
  });
  expect(sent.status()).toBe(422);
  expect(await sent.text()).toContain("has not passed its gate");
  await page.getByRole("link", { name: "To the gate" }).click();
  await passGate(page, run, signInAs);
  for (const [name, buffer, told] of refused) {
    await page.getByLabel("Readings file").setInputFiles({ name, mimeType: "text/csv", buffer });
    await page.getByRole("button", { name: "Upload" }).click();
    await expect(main, name).toContainText(told);
    await expect(main, name).toContainText("No readings yet");
  }
  await page
    .getByLabel("Readings file")
    .setInputFiles({ name: "good.csv", mimeType: "text/csv", buffer: Buffer.from(good) });
  await page.getByRole("button", { name: "Upload" }).click();
  await expect(main).toContainText("good.csv");
});
