import { Button } from "@/components/ui/button";
import { Menu, MenuItem } from "@/components/ui/menu";
import { LEAST_OPTIONS, MOST_OPTIONS } from "@/lib/domain/options";
import { ChooseDialog } from "./choose-dialog";
import type { OptionDeskView, OptionDoors, ShownOption } from "./option-data";

type Props = {
  readonly view: OptionDeskView;
  readonly shown: ShownOption;
  readonly index: number;
  readonly doors: OptionDoors;
  readonly edit: () => void;
  readonly duplicate: () => void;
  readonly knock: (door: OptionDoors["add"], input: unknown) => Promise<void>;
};

/** What can be done with one option. */
export function OptionTools({ view, shown, index, doors, edit, duplicate, knock }: Props) {
  const { option } = shown;
  const named = { jobId: view.jobId, optionId: option.id };
  return (
    <div className="mt-2 flex flex-wrap gap-2 font-normal">
      {view.options.length < LEAST_OPTIONS ? null : (
        <ChooseDialog view={view} shown={shown} choose={doors.choose} />
      )}
      <Button onClick={edit}>Change</Button>
      <Menu
        trigger={
          <Button variant="quiet" aria-label={`More for ${option.label}`}>
            More
          </Button>
        }
        align="start"
      >
        <MenuItem onSelect={duplicate} disabled={view.options.length >= MOST_OPTIONS}>
          Duplicate
        </MenuItem>
        <MenuItem onSelect={() => void knock(doors.move, { ...named, by: -1 })} disabled={index === 0}>
          Move left
        </MenuItem>
        <MenuItem
          onSelect={() => void knock(doors.move, { ...named, by: 1 })}
          disabled={index === view.options.length - 1}
        >
          Move right
        </MenuItem>
        <MenuItem danger onSelect={() => void knock(doors.remove, named)}>
          Remove
        </MenuItem>
      </Menu>
    </div>
  );
}
