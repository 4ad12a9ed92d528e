import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
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
        <Button wide onClick={() => void signOut()}>
          Sign out
        </Button>
        {fetchedAt === null ? null : (
          <p className="text-xs text-muted">
            Jobs as the office had them {new Date(fetchedAt).toLocaleString()}.
          </p>
        )}
      </div>
    </Card>
  );
}

/**
 * Without a signal the sign-in itself stays until the next contact; what the phone holds is put away at once.
 * Asked again, the office says that nobody is signed in, and the page leads to the sign-in.
 */
async function signOut(): Promise<void> {
  await phone().settle();
  try {
    const { csrfToken } = await (await fetch("/api/auth/csrf")).json();
    await fetch("/api/auth/signout", {
      method: "POST",
      headers: { "content-type": "application/x-www-form-urlencoded" },
      body: new URLSearchParams({ csrfToken, json: "true" }),
    });
  } finally {
    await phone().forgetOwner();
    await phone().refresh();
  }
}
