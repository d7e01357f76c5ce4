import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { requirePermission } from "@/lib/web/auth";
import { recordFurnaceAction } from "../actions";
import { FurnaceFields } from "../furnace-fields";
import { HotWorkNotice } from "../hot-work-notice";

export const metadata = { title: "Record a furnace" };

export default async function NewFurnacePage() {
  await requirePermission("furnace.record");
  return (
    <Page title="Record a furnace" crumbs={<Breadcrumb trail={[{ label: "Furnaces", href: "/furnaces" }]} />}>
      <HotWorkNotice />
      <ActionForm action={recordFurnaceAction} label="Record a furnace">
        <TextField name="tag" label="Tag" hint="What stands on it, such as FUR-01. It stays." />
        <FurnaceFields />
        <div className="form-actions">
          <SubmitButton>Record the furnace</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
