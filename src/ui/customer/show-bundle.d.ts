/** Script and style of a customer's page, bundled by `vite.config.ts` as the command line bundles them. */
declare module "virtual:show-bundle" {
  import type { Hashed } from "../../core/show/show-page.ts";

  export const script: Hashed;
  export const style: Hashed;
}
