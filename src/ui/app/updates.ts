/** The installed app: works without a network, and says when a new version waits. It is taken only when the person asks. */
import { registerSW } from "virtual:pwa-register";
import { create } from "zustand";

interface Updates {
  /** A newer version is fetched and ready to take over. */
  readonly isWaiting: boolean;
  /** Everything needed without a network is on this device. */
  readonly isOffline: boolean;
  /** Why the page could not be kept for offline use, in the browser's words; null when nothing went wrong. */
  readonly failed: string | null;
}

export const useUpdates = create<Updates>(() => ({ isWaiting: false, isOffline: false, failed: null }));

const takeOver = registerSW({
  onNeedRefresh: () => useUpdates.setState({ isWaiting: true }),
  onOfflineReady: () => useUpdates.setState({ isOffline: true }),
  onRegisterError: (error: unknown) => useUpdates.setState({ failed: String(error) }),
});

/** Takes the waiting version: the page loads anew, the plan comes back from this device. */
export const takeUpdate = (): void => void takeOver(true);
