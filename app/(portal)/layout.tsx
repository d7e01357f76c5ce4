import type { ReactNode } from "react";
import { PortalShell } from "@/app/_ui/portal-shell";
import { may } from "@/lib/domain/staff/permissions";
import { requireCustomer } from "@/lib/web/auth";

export default async function PortalLayout({ children }: { readonly children: ReactNode }) {
  const actor = await requireCustomer();
  return (
    <PortalShell name={actor.name} mayManage={may(actor.roles, "portal.manage")}>
      {children}
    </PortalShell>
  );
}
