/** One thread of `ideas`. */
import { ideasJobs } from "../worker/ideas-jobs.ts";
import { serveThread } from "./thread.ts";

serveThread(ideasJobs);
