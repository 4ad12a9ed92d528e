import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import { KeptForGood } from "./kept-for-good";
import { SignOut } from "./sign-out";
import { useHabits } from "./use-habits";
import { phone } from "./use-phone";

/** How this phone is held and read, and the way out. */
export function PhoneMenu({ fetchedAt }: { readonly fetchedAt: string | null }) {
  const [habits, setHabits] = useHabits();
  return (
    <Card title="This phone" className="mt-6">
      <div className="grid gap-2">
        <Button
          wide
          aria-pressed={habits.hand === "left"}
          onClick={() => setHabits({ ...habits, hand: habits.hand === "left" ? "right" : "left" })}
        >
          Keys for the {habits.hand} hand: change
        </Button>
        <Button
          wide
          aria-pressed={habits.torch}
          onClick={() => setHabits({ ...habits, torch: !habits.torch })}
        >
          {habits.torch ? "Usual colours" : "Strong contrast for a torch"}
        </Button>
        <Button wide onClick={() => void phone().send().then(phone().refresh)}>
          Send and ask the office now
        </Button>
        <a href="/account" className="button button-secondary w-full">
          Account
        </a>
        <SignOut />
        <KeptForGood />
        {fetchedAt === null ? null : (
          <p className="text-xs text-muted">
            Jobs as the office had them {new Date(fetchedAt).toLocaleString()}.
          </p>
        )}
      </div>
    </Card>
  );
}
