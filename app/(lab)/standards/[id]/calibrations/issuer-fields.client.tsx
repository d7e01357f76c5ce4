"use client";
import { useState } from "react";
import { Disclosure } from "@/app/_ui/disclosure";
import { useField } from "@/app/_ui/form-context.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { routeLabels } from "@/lib/domain/calibration/labels";
import { routes } from "@/lib/domain/calibration/types";
import type { ProviderRoute } from "@/lib/domain/provider/types";

type Issuer = {
  readonly name: string;
  readonly route: ProviderRoute;
  readonly accreditation: string;
  readonly isApproved: boolean;
};

type Props = {
  readonly issuers: readonly Issuer[];
  readonly laboratory: string;
  readonly issuer?: string;
  readonly accreditation?: string;
};

/** Who issued it and by which route it reaches the SI: the route of a provider is on record and follows the choice. */
export function IssuerFields({ issuers, laboratory, issuer, accreditation }: Props) {
  const first = issuers.find(({ name }) => name === issuer);
  const keptRoute = useField("route").kept;
  const [route, setRoute] = useState<string>(first?.route ?? "");
  const [number, setNumber] = useState(accreditation ?? first?.accreditation ?? "");
  const shown = keptRoute && route === "" ? keptRoute : route;
  const choose = (name: string) => {
    const chosen = issuers.find((one) => one.name === name);
    if (!chosen) return;
    setRoute(chosen.route);
    setNumber(chosen.accreditation);
  };
  return (
    <>
      <input type="hidden" name="laboratory" value={laboratory} />
      <div
        onChange={(event) => {
          if (event.target instanceof HTMLSelectElement) choose(event.target.value);
        }}
      >
        <SelectField
          name="issuer"
          label="Issued by"
          prompt="Choose the provider"
          defaultValue={first?.name}
          optional
          hint={
            issuer && !first
              ? `The file names ${issuer}, which is not on record: record it under Providers first.`
              : "Leave it for an in-house calibration."
          }
          choices={issuers.map(({ name, isApproved }) => ({
            value: name,
            label: isApproved ? name : `${name} (not approved today)`,
          }))}
        />
      </div>
      <SelectField
        key={`route ${shown}`}
        name="route"
        label="How it reaches the SI"
        prompt="Choose the route"
        defaultValue={shown || undefined}
        choices={routes.map((value) => ({ value, label: routeLabels[value] }))}
      />
      <TextField
        key={`accreditation ${number}`}
        name="accreditation"
        label="Accreditation"
        hint="The number the certificate was issued under, if any."
        defaultValue={number}
        optional
      />
      <Disclosure summary="For another route: why it reaches the SI" open={shown === "other"}>
        <TextArea
          name="justification"
          label="Why it reaches the SI"
          hint="Asked for where neither an institute, an accreditation nor our own calibration vouches for it."
          rows={3}
          optional
        />
      </Disclosure>
    </>
  );
}
