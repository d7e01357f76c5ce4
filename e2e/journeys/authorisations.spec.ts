import { expect, test } from "../fixtures";

test("a quality manager says what somebody may answer for, and takes it back", async ({ page, signInAs }) => {
  await signInAs("quality-manager");
  await page.goto("/staff");
  await page.getByRole("link", { name: "Odile Marchetti" }).click();
  await page.getByRole("link", { name: "Authorisations" }).click();
  const main = page.getByRole("main");
  await expect(main).toContainText("Sign off results");

  // A range upside down is refused at its field, and what was typed stays.
  const grant = page.getByRole("form", { name: "Grant an authorisation" });
  await grant.getByLabel("State opinions and interpretations").check();
  await grant.getByLabel("Type S", { exact: true }).check();
  await grant.getByLabel("From", { exact: true }).fill("1100");
  await grant.getByLabel("To", { exact: true }).fill("300");
  await grant.getByLabel("On what grounds").fill("A comparison with two other laboratories (invented).");
  await grant.getByRole("button", { name: "Grant it" }).click();
  await expect(grant).toContainText("Above where the range begins");
  await grant.getByLabel("From", { exact: true }).fill("300");
  await grant.getByLabel("To", { exact: true }).fill("1100");
  await grant.getByRole("button", { name: "Grant it" }).click();
  const granted = main.getByRole("listitem").filter({ hasText: "A comparison with two other laboratories" });
  await expect(granted).toContainText("type S, 300 °C to 1100 °C");
  await expect(granted).toContainText("In force");
  await expect(granted).toContainText("Idris Vaughan");

  await granted.getByText(/^Withdraw: state opinions/).click();
  await granted.getByLabel("Why it ends").fill("Granted for a demonstration of withdrawing it.");
  await granted.getByRole("button", { name: "Withdraw it" }).click();
  await expect(granted).toContainText("Granted for a demonstration of withdrawing it.");
  await expect(granted.getByRole("button", { name: "Withdraw it" })).toHaveCount(0);

  // Nobody authorises themselves.
  await page.goto("/staff");
  await main.getByRole("link", { name: "Idris Vaughan" }).click();
  await page.getByRole("link", { name: "Authorisations" }).click();
  await expect(main).toContainText("Nobody authorises themselves");
  await expect(page.getByRole("form", { name: "Grant an authorisation" })).toHaveCount(0);
});
