import { pdfPages } from "@/tests/support/pdf-text";
import { png } from "@/tests/support/png";
import { acceptOrder } from "../accept-order";
import { expect, test } from "../fixtures";

const list = (...rows: readonly string[]) => ({
  name: "sensors.csv",
  mimeType: "text/csv",
  buffer: Buffer.from(`serial,loop resistance ohm,polarity,lot,end\n${rows.join("\n")}\n`),
});

test("sensors come in from a list, get a photo and labels on a sheet, and are found by what is on the label", async ({
  page,
  signInAs,
}) => {
  await signInAs("front-desk");
  const main = page.getByRole("main");
  const heading = page.getByRole("heading", { level: 1 });
  await page.goto("/orders/new");
  await page.getByLabel("Customer", { exact: true }).selectOption({ label: "Oakes & Bellamy Glass" });
  await page.getByLabel("How many").fill("3");
  await page.getByLabel("Construction").fill("Mineral-insulated, 3 mm");
  await page.getByLabel("Setpoints (may stay empty)").fill("300 500");
  await page.getByRole("button", { name: "Record the order" }).click();
  await expect(heading).toContainText(/O-\d{4}-\d{4}/);
  const order = /O-\d{4}-\d{4}/.exec((await heading.textContent()) ?? "")?.[0] ?? "";
  await acceptOrder(page);

  // One wrong cell: nothing is stored, and the cell is named with its remedy.
  await page.goto(`/orders/${order}/receive`);
  await page.getByRole("link", { name: "From a file" }).click();
  await page
    .getByLabel("The list")
    .setInputFiles(list("LIST-1,11.2,ok,H7,first", 'LIST-2,"11,3",ok,H7,second', "LIST-3,11.1,ok,H7,"));
  await page.getByRole("button", { name: "Look at the list" }).click();
  await expect(main).toContainText("Row 3, column loop resistance ohm");
  await expect(main).toContainText("Write 11.3, with a decimal point.");
  await expect(main).toContainText("Nothing was stored");

  // Mended: looked at first, with what the sensors share and what each differs in.
  await page
    .getByLabel("The list")
    .setInputFiles(list("LIST-1,11.2,ok,H7,first", "LIST-2,11.3,reversed,H7,second", "LIST-3,11.1,ok,H7,"));
  await page.getByRole("button", { name: "Look at the list" }).click();
  await expect(main).toContainText("3 sensors, 1 outside the limits of intake. Nothing is stored yet.");
  await expect(page.getByRole("row", { name: /LIST-2/ })).toContainText("polarity is reversed");
  await expect(main).toContainText("H7");
  await page.getByRole("button", { name: "Take in 3 sensors" }).click();
  await expect(main).toContainText("3 sensors are taken in; 1 not as described or outside the limits");

  // The sensor shows its verdicts; a photo goes with them.
  await page.goto(`/orders/${order}`);
  await page.goto("/sensors/find");
  await expect(page.getByLabel("Label, tag or serial")).toBeFocused();
  await page.keyboard.type("list-2");
  await page.keyboard.press("Enter");
  await expect(heading).toContainText(/Sensor T-\d{6}/);
  const tag = /T-\d{6}/.exec((await heading.textContent()) ?? "")?.[0] ?? "";
  await expect(page.locator("#intake")).toContainText("polarity is reversed");
  const photos = page.locator("#photos");
  await photos
    .getByLabel("Photo", { exact: true })
    .setInputFiles({ name: "drawing.png", mimeType: "image/png", buffer: Buffer.from("<svg/>") });
  await photos.getByRole("button", { name: "Keep the photo" }).click();
  await expect(photos).toContainText("This is no JPEG, PNG or WebP");
  await photos
    .getByLabel("Photo", { exact: true })
    .setInputFiles({ name: "photo.png", mimeType: "image/png", buffer: Buffer.from(png(60, 40)) });
  await photos.getByLabel(/^What it shows/).fill("Plug wired the other way round");
  await photos.getByRole("button", { name: "Keep the photo" }).click();
  const picture = photos.getByRole("img", { name: "Plug wired the other way round" });
  await expect(picture).toBeVisible();
  const kept = await page.request.get((await picture.getAttribute("src")) ?? "");
  expect(kept.headers()).toMatchObject({
    "content-type": "image/png",
    "x-content-type-options": "nosniff",
    "content-disposition": `inline; filename="${tag}.png"`,
  });

  // Labels on a sheet that was begun; the label opens its sensor.
  const labels = await page.request.post(`/api/labels/${order}`, {
    form: { layout: "a4-3x8", startAt: "23" },
    headers: { origin: new URL(page.url()).origin },
  });
  expect(await pdfPages(new Uint8Array(await labels.body()))).toHaveLength(2);
  await page.goto("/sensors/find");
  await page.getByLabel("Label, tag or serial").fill(`${new URL(page.url()).origin}/sensors/${tag}`);
  await page.keyboard.press("Enter");
  await expect(heading).toContainText(tag);
  await page.goto("/sensors/find?q=no-such-serial");
  await expect(main).toContainText("There is no sensor with the tag or serial");

  // The camera is open to that page alone.
  const cameraOf = async (path: string) => (await page.request.get(path)).headers()["permissions-policy"];
  expect(await cameraOf("/sensors/find")).toContain("camera=(self)");
  expect(await cameraOf(`/sensors/${tag}`)).toContain("camera=()");

  // What sensors are held against is there to read.
  await page.goto("/sensors/policy");
  await expect(main).toContainText("at least 100 MΩ");
  await expect(page.getByRole("button", { name: "Set the limits" })).toHaveCount(0);
});
