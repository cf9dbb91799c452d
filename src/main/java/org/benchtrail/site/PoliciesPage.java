package org.benchtrail.site;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;

/** Calendar, times by priority and policies: what counts now, what was decided when, and the form that decides something else. */
@Path("/site/policies")
@Authenticated
public class PoliciesPage {
    private final SiteActs acts;
    private final SiteBook book;
    private final Directory people;
    private final CurrentActor current;
    private final Clock clock;

    PoliciesPage(SiteActs acts, SiteBook book, Directory people, CurrentActor current, Clock clock) {
        this.acts = acts;
        this.book = book;
        this.people = people;
        this.current = current;
        this.clock = clock;
    }

    /** A decision: what it changed of what counted just before it. */
    public record Line(
            int number,
            String made,
            String by,
            String inForce,
            String note,
            String policy,
            List<RulesDifference> changes) {}

    /**
     * What the page shows.
     *
     * @param version of the latest decision
     * @param deciding whether the viewer may decide
     */
    public record View(int version, boolean deciding, List<Line> made) {}

    @CheckedTemplate(basePath = "site")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance policies(View v, FormValues fill, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response policies() {
        return Html.ok(page(stored(), List.of()));
    }

    private FormValues stored() {
        return new FormValues().put("", RulesText.of(book.rules()));
    }

    private TemplateInstance page(FormValues fill, List<Invalid.Problem> problems) {
        List<SiteActs.Made> made = acts.made(current.actor());
        SiteHistory history = book.history();
        Set<String> accounts = made.stream().map(SiteActs.Made::madeBy).collect(Collectors.toSet());
        Map<String, String> names = people.names(accounts);
        ZoneId zone = current.zone();
        Instant now = clock.instant();
        List<Line> lines = new ArrayList<>();
        for (SiteActs.Made m : made) {
            RulesText before =
                    RulesText.of(history.upTo(m.number() - 1).at(m.inForce()).rules());
            lines.add(new Line(
                    m.number(),
                    Moments.text(m.made(), zone),
                    names.getOrDefault(m.madeBy(), m.madeBy()),
                    Moments.text(m.inForce(), zone) + (m.inForce().isAfter(now) ? ", not yet" : ""),
                    m.note(),
                    PolicyFingerprint.of(m.rules().rules().policy()),
                    RulesDifference.between(before, m.rules())));
        }
        return Templates.policies(
                new View(history.latest(), current.may(Permission.SET_POLICIES), lines), fill, problems);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response decide(MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.SET_POLICIES, current.actor());
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    acts.decide(
                            form.read(RulesText.class),
                            form.read(SiteActs.Decision.class),
                            form.version(),
                            current.actor());
                    return Html.goTo("/site/policies");
                },
                refusal -> page(stored().typed(form, refusal), SitePage.told(refusal)));
    }
}
