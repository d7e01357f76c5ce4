import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { PortalShell } from "@/app/_ui/portal-shell";
import { currentActor } from "@/lib/web/auth";

export default async function PortalLayout({ children }: { readonly children: ReactNode }) {
  const actor = await currentActor();
  if (!actor || actor.kind === "system") redirect("/sign-in");
  if (actor.kind !== "customer") redirect("/");
  return <PortalShell name={actor.name}>{children}</PortalShell>;
}
