package org.benchtrail.platform.form;

import io.quarkus.qute.TemplateInstance;
import jakarta.persistence.OptimisticLockException;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.problem.ProblemKind;

/**
 * Why what a form asked for was not done, told by its page, which is shown again with what was typed.
 *
 * @param kind {@code INVALID} (422) if something typed has to be put right, {@code STALE} (409) if somebody else was quicker, {@code
 *     UNMET} (409) if something has to be done first
 * @param problems what is wrong, by field; none if the form is stale
 */
public record Refusal(ProblemKind kind, List<Problem> problems) {

    /** What has to be done first, for an act whose refusal is a value. */
    public static Refusal unmet(List<Problem> problems) {
        return new Refusal(ProblemKind.UNMET, problems);
    }

    public boolean isStale() {
        return kind == ProblemKind.STALE;
    }

    /** The page under the status of the refusal; its words lead to no field that the page does not have any more. */
    public Response on(TemplateInstance page) {
        return Html.status(kind.status(), LiveLinks.in(page.render()));
    }

    /**
     * Does what a posted form asks for.
     *
     * @param act answers if it is done; {@link Invalid} and {@link Stale} leave no trace of it
     * @param again the page that tells the refusal, answered under its status
     */
    public static Response answer(Supplier<Response> act, Function<Refusal, TemplateInstance> again) {
        return respond(act, refusal -> refusal.on(again.apply(refusal)));
    }

    /** As {@link #answer}, for a page that chooses its status itself. */
    public static Response respond(Supplier<Response> act, Function<Refusal, Response> again) {
        Refusal refusal;
        try {
            return act.get();
        } catch (Invalid e) {
            refusal = new Refusal(ProblemKind.INVALID, e.problems());
        } catch (Stale | OptimisticLockException e) {
            refusal = new Refusal(ProblemKind.STALE, List.of());
        }
        return again.apply(refusal);
    }
}
