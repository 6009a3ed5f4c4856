/** The thread beside the keeper’s own that looks for better plans; the keeper starts it from the file beside its own. */
import '#core/desk/planWorker.ts';
