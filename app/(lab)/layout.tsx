import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { LabShell } from "@/app/_ui/lab-shell";
import { currentActor } from "@/lib/web/auth";

export default async function LabLayout({ children }: { readonly children: ReactNode }) {
  const actor = await currentActor();
  if (!actor || actor.kind === "system") redirect("/sign-in");
  if (actor.kind === "customer") redirect("/portal");
  return (
    <LabShell name={actor.name} roles={actor.roles}>
      {children}
    </LabShell>
  );
}
