import { NavigationRoute, type PrecacheEntry, Serwist, type SerwistPlugin } from "serwist";

/*
 * The service worker of the field screens. It keeps the page and its scripts, nothing of any company: what a
 * person works with is in IndexedDB, and every request for data goes to the network.
 */
declare const self: { readonly __SW_MANIFEST: (PrecacheEntry | string)[] | undefined };

/** Without a sign-in the page leads to the sign-in form. That is not the page: keep the old one until it is. */
const onlyThePageItself: SerwistPlugin = {
  cacheWillUpdate: async ({ response }) =>
    response.status === 200 && !response.redirected ? response : null,
};

const serwist = new Serwist({
  precacheEntries: self.__SW_MANIFEST ?? [],
  precacheOptions: { cleanupOutdatedCaches: true, plugins: [onlyThePageItself] },
  // A page that is open goes on with the scripts it began with; the person says when to load the new ones.
  skipWaiting: false,
  clientsClaim: true,
});
serwist.registerRoute(new NavigationRoute(pageFromCache, { allowlist: [/^\/today(\/|\?|$)/] }));
serwist.addEventListeners();

async function pageFromCache({ request }: { readonly request: Request }): Promise<Response> {
  return (await serwist.matchPrecache("/today")) ?? fetch(request);
}
