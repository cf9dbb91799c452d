package org.benchtrail.ticket.erasure;

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
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.proposals.ProposalActs;
import org.benchtrail.ticket.GivenFiles;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.WordsErasure;
import org.jboss.resteasy.reactive.RestPath;

/** Where a supervisor proposes to erase words that tell of a person, and sees which were. */
@Path("/tickets/{number}/erasing/words")
@Authenticated
public class WordsPage {
    private final WordsErasure erasure;
    private final WordsChange change;
    private final GivenFiles given;
    private final ProposalActs proposals;
    private final CurrentActor current;

    WordsPage(
            WordsErasure erasure, WordsChange change, GivenFiles given, ProposalActs proposals, CurrentActor current) {
        this.erasure = erasure;
        this.change = change;
        this.given = given;
        this.proposals = proposals;
        this.current = current;
    }

    /**
     * What the page shows.
     *
     * @param written entries with words
     * @param gone entries of which the words were erased
     * @param given files of the ticket that somebody took
     */
    public record View(String number, List<WordsErasure.Written> written, List<Gone> gone, List<GivenLine> given) {}

    /** An entry of which the words were erased. */
    public record Gone(int entry, String at, String decidedBy, String reason) {}

    @CheckedTemplate(basePath = "ticket/erasure")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance words(View v, FormValues fill, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response words(@RestPath String number) {
        Permissions.require(Permission.DECIDE_PROPOSALS, current.actor());
        return Html.ok(page(TicketNumber.parse(number), new FormValues(), List.of()));
    }

    private TemplateInstance page(TicketNumber number, FormValues fill, List<Invalid.Problem> problems) {
        return Templates.words(
                new View(
                        number.toString(),
                        erasure.written(number),
                        erasure.erased(number).stream()
                                .map(e -> new Gone(
                                        e.entry(), Times.text(e.at(), current.zone()), e.decidedBy(), e.reason()))
                                .toList(),
                        GivenLine.of(given.of(number), current.zone())),
                fill,
                problems);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response propose(@RestPath String number, MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.DECIDE_PROPOSALS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> Html.goTo("/proposals/"
                        + proposals
                                .propose(
                                        change,
                                        new WordsChange.OfEntries(ticket.toString(), entries(form)),
                                        form.text("reason"),
                                        current.actor())
                                .id()),
                refusal -> page(ticket, new FormValues().typed(form, refusal), refusal.problems()));
    }

    private static List<Integer> entries(PostedForm form) {
        try {
            return form.all("entries").stream()
                    .map(Integer::valueOf)
                    .distinct()
                    .sorted()
                    .toList();
        } catch (NumberFormatException e) {
            throw new Invalid("entries", WordsErasure.TICK);
        }
    }
}
