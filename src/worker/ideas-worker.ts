/** Serves the jobs of a search for ideas in the page. */
import { ideasJobs } from "./ideas-jobs.ts";
import { serveJobs } from "./job.ts";

serveJobs(ideasJobs, self);
