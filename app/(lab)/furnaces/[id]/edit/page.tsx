import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { isoDay } from "@/lib/domain/calibration/due";
import { furnaceView } from "@/lib/views/furnace";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { changeFurnaceAction } from "../../actions";
import { FurnaceFields } from "../../furnace-fields";

export const metadata = { title: "Change a furnace" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function EditFurnacePage({ params }: Props) {
  const actor = await requirePermission("furnace.record");
  const furnace = await load(furnaceView(actor, (await params).id, isoDay(new Date())));
  const trail = [
    { label: "Furnaces", href: "/furnaces" },
    { label: furnace.tag, href: `/furnaces/${furnace.id}` },
  ];
  return (
    <Page title={`Change ${furnace.tag}`} crumbs={<Breadcrumb trail={trail} />}>
      <ActionForm action={changeFurnaceAction} label="Change the furnace">
        <input type="hidden" name="id" value={furnace.id} />
        <input type="hidden" name="version" value={furnace.version} />
        <FurnaceFields furnace={furnace} />
        <div className="form-actions">
          <SubmitButton>Save</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
