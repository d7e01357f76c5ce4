import type { CharacterisationFigures } from "./characterisation-figures";

export const configurationKinds = ["bare-tube", "equalising-block"] as const;
export type ConfigurationKind = (typeof configurationKinds)[number];

/** What the controller is set to for a temperature at the working depth. */
export type ControllerSetpoint = { readonly celsius: number; readonly controllerCelsius: number };

export type Furnace = {
  readonly id: string;
  readonly tag: string;
  readonly name: string;
  readonly maker: string;
  readonly serial: string;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  readonly boreMillimetre: number;
  readonly lengthMillimetre: number;
  readonly version: number;
};

export type FurnaceConfiguration = {
  readonly id: string;
  readonly furnaceId: string;
  readonly name: string;
  readonly kind: ConfigurationKind;
  readonly places: number;
  readonly immersionMillimetre: number;
  readonly version: number;
};

export type Characterisation = {
  readonly id: string;
  readonly configurationId: string;
  /** ISO days. */
  readonly performedOn: string;
  readonly validUntil: string;
  readonly uniformityHalfWidthCelsius: number;
  readonly statement: string;
  /** Of a measured one; a typed one has its single figure alone. */
  readonly figures: CharacterisationFigures | null;
};
