import { randomUUID } from "node:crypto";
import { rmSync } from "node:fs";
import { pdfPages } from "@/tests/support/pdf-text";
import { expect, test } from "../fixtures";
import { generateClient } from "../generated-client";

test("a customer gives a program a token; a client generated from the document requests work and reads certificates", async ({
  page,
  signInAs,
  request,
  baseURL,
}) => {
  await signInAs("Brandt");
  await page.goto("/portal/programs");
  const main = page.getByRole("main");
  await page.getByLabel("For which program").fill("Plant maintenance");
  await page.getByRole("button", { name: "Make the token" }).click();
  await expect(main).toContainText("Choose what the token opens.");
  for (const label of ["Read orders", "Request work", "Read certificates"])
    await page.getByLabel(label, { exact: false }).check();
  await page.getByRole("button", { name: "Make the token" }).click();
  await expect(main).toContainText("it is not shown again");
  const token = /emf_[A-Za-z0-9_-]{43}/.exec((await main.textContent()) ?? "")?.[0] ?? "";

  const document = await (await request.get("/api/v1/openapi.json")).json();
  const { complaints, useInterface, folder } = await generateClient(document);
  expect(complaints).toEqual([]);
  const used = await useInterface(`${baseURL}/api/v1`, token, randomUUID());
  expect(used.statuses).toEqual([201, 200, 422, 200, 200, 200, 404]);
  expect(used.again).toBe(used.number);
  expect(used.state).toBe("requested");
  expect(used.setpoints).toEqual(["1000", "1500"]);
  expect(used.listed).toContain(used.number);
  expect(Object.keys(used.wrongFields ?? {})).toEqual(["request.lines.0.quantity"]);
  expect(used.hash).toBe(used.listedHash);
  expect(used.rows).toBeGreaterThan(0);
  expect((await pdfPages(used.pdf)).join(" ")).toContain("Calibration certificate");

  // What opens it is the token and nothing else: not the session of the browser, not another's token.
  expect((await page.request.get("/api/v1/orders")).status()).toBe(401);
  await page.reload();
  await page.getByRole("button", { name: "Revoke" }).first().click();
  await expect(main).toContainText("Revoked");
  const after = await request.get("/api/v1/orders", { headers: { authorization: `Bearer ${token}` } });
  expect(after.status()).toBe(401);
  expect(after.headers()["content-type"]).toBe("application/problem+json");
  rmSync(folder, { recursive: true, force: true });
});
