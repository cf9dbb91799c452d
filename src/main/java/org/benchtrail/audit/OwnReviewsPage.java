package org.benchtrail.audit;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;

/** What reviewers found in the viewer's own work. */
@Path("/my-reviews")
@Authenticated
public class OwnReviewsPage {
    private final ReviewQueries queries;
    private final CurrentActor current;

    OwnReviewsPage(ReviewQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "audit")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance ownReviews(List<ReviewQueries.Signed> signed, ReviewCoaching.Own coaching);
    }

    @GET
    @Blocking
    public Response ownReviews() {
        ReviewQueries.OwnReviews own = queries.ofOwnWork(current.actor(), current.zone());
        return Html.ok(Templates.ownReviews(own.signed(), own.coaching()));
    }
}
