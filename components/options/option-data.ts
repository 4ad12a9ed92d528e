import type { CatalogChoices } from "@/components/stage/choices";
import type { ModelAnswer } from "@/components/stage/use-live-evaluation";
import type { EquipmentModel } from "@/lib/domain/catalog";
import type { JobContext } from "@/lib/domain/evaluate";
import type { Option, OptionChoice, OptionFigures, OptionInputs } from "@/lib/domain/options";
import type { FieldProblem } from "@/lib/domain/problems";
import type { StageKey } from "@/lib/domain/stages";

export type OptionDeskView = {
  readonly jobId: string;
  readonly options: readonly Option[];
  readonly models: Readonly<Record<string, EquipmentModel>>;
  readonly context: JobContext;
  readonly weather: { readonly name: string; readonly sha256: string } | null;
  readonly choice: OptionChoice | null;
  readonly catalog: CatalogChoices;
  readonly signed: readonly StageKey[];
  readonly mayEdit: boolean;
};

export type Answer =
  | { readonly ok: true; readonly value: unknown }
  | {
      readonly ok: false;
      readonly code: string;
      readonly message: string;
      readonly fields: readonly FieldProblem[];
    };
type Door = (input: unknown) => Promise<Answer>;

export type OptionDoors = {
  readonly add: Door;
  readonly save: Door;
  readonly move: Door;
  readonly remove: Door;
  readonly choose: Door;
  readonly keepForecast: Door;
  readonly readModel: (input: unknown) => Promise<ModelAnswer>;
};

/** An option as the table shows it: saved, or as it is being typed. */
export type ShownOption = {
  readonly option: Option;
  readonly inputs: OptionInputs;
  readonly model: EquipmentModel | null;
  readonly context: JobContext;
  readonly figures: OptionFigures;
};
