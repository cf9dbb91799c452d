package org.benchtrail.webhook;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;

/** How each receiver of changes stands, read in one transaction. */
@ApplicationScoped
class WebhookQueries {
    private final WebhookRows rows;
    private final WebhookJob job;

    WebhookQueries(WebhookRows rows, WebhookJob job) {
        this.rows = rows;
        this.job = job;
    }

    @Transactional
    WebhookView view(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.SEE_ALARMS, viewer);
        Map<String, WebhookView.Line> lines = new TreeMap<>();
        for (Receiver receiver : job.receivers()) {
            lines.put(
                    receiver.name(),
                    new WebhookView.Line(receiver.name(), receiver.place(), 0, "Nothing sent yet", false, ""));
        }
        for (WebhookRows.State state : rows.all()) {
            WebhookView.Line named = lines.get(state.name());
            lines.put(state.name(), line(state, named == null ? "" : named.place(), zone));
        }
        return new WebhookView(lines.values().stream().toList());
    }

    private static WebhookView.Line line(WebhookRows.State state, String place, ZoneId zone) {
        Instant answered = state.answered();
        boolean trouble = state.failures() > 0;
        return new WebhookView.Line(
                state.name(),
                place,
                state.size() - state.next(),
                answered == null ? "Nothing sent yet" : state.answer() + ", " + Moments.text(answered, zone),
                trouble,
                trouble ? Moments.text(state.notBefore(), zone) : "");
    }
}
