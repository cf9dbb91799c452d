package org.benchtrail.ticket;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.limits.LimitBook;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.form.SignedOut;
import org.benchtrail.trail.Verification;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** The job sheet, on which a ticket is worked, and the pages behind it: its trail, one entry, attached files. */
@Path("/tickets/{number}")
public class SheetPage {
    private final TicketActs acts;
    private final TicketLook look;
    private final KnownCauses known;
    private final CurrentActor current;
    private final Directory people;
    private final PolicyConfig policy;
    private final Clock clock;
    private final Diagnoses diagnoses;
    private final LimitBook limits;

    SheetPage(
            TicketActs acts,
            TicketLook look,
            KnownCauses known,
            CurrentActor current,
            Directory people,
            PolicyConfig policy,
            Clock clock,
            Diagnoses diagnoses,
            LimitBook limits) {
        this.acts = acts;
        this.look = look;
        this.known = known;
        this.current = current;
        this.people = people;
        this.policy = policy;
        this.clock = clock;
        this.diagnoses = diagnoses;
        this.limits = limits;
    }

    /** What the page says at its head after a request that did not end in a plain success. */
    public record Notice(
            String words, List<Missing> missing, List<Invalid.Problem> problems, List<SheetView.Line> since) {
        static final Notice NONE = new Notice("", List.of(), List.of(), List.of());

        public boolean any() {
            return !words.isEmpty();
        }
    }

    @CheckedTemplate(basePath = "ticket")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance sheet(SheetView v, Fill fill, Notice notice);

        static native TemplateInstance trail(
                String number, String title, Verification verification, List<TrailLine> lines);

        static native TemplateInstance ranking(String number, String title, RankingView r);

        static native TemplateInstance entry(EntryView e, Fill fill, List<Invalid.Problem> problems);
    }

    @GET
    @Authenticated
    @Blocking
    public Response show(@RestPath String number) {
        TicketLook.Whole ticket = look.ticket(TicketNumber.parse(number), current.actor());
        return Html.ok(Templates.sheet(view(ticket), Fill.of(ticket.sheet()), Notice.NONE));
    }

    /** One of the forms of the sheet. Open to all, so that what a signed-out person typed can be given back to them. */
    @POST
    @Path("{form}")
    @PermitAll
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response act(@RestPath String number, @RestPath String form, MultivaluedMap<String, String> typed) {
        if (!current.signedIn()) {
            return SignedOut.resend("/tickets/" + number + "/" + form, typed);
        }
        if (!SheetForms.known(form)) {
            throw new NotFound("form '" + form + "'");
        }
        TicketNumber ticket = TicketNumber.parse(number);
        int version = version(typed);
        try {
            Outcome outcome = perform(ticket, form, typed, version);
            return outcome.refused() ? refused(outcome, typed) : done(outcome);
        } catch (Invalid e) {
            return again(422, ticket, typed, "Nothing was recorded yet. Put this right:", List.of(), e.problems(), 0);
        } catch (Stale e) {
            return again(
                    409,
                    ticket,
                    typed,
                    "Somebody else wrote on this sheet meanwhile. What you typed is kept below: read what is new, then send it again.",
                    List.of(),
                    List.of(),
                    version);
        }
    }

    private Outcome perform(TicketNumber ticket, String form, MultivaluedMap<String, String> typed, int version) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        JobSheet sheet = look.ticket(ticket, current.actor()).sheet();
        if (sheet.entries() != version) {
            throw new Stale(sheet.entries());
        }
        SheetForms.Request request = SheetForms.read(
                form,
                new SheetForm(typed, new SheetForm.Known(diagnoses.model(sheet), limits.library())),
                sheet,
                current.zone());
        if (request.move() != null) {
            return acts.performAndMove(ticket, version, request.acts(), request.move(), current.actor());
        }
        if (request.acts().isEmpty()) {
            throw new Invalid("form", "Nothing new was filled in, so there is nothing to record.");
        }
        return acts.perform(ticket, version, request.acts(), current.actor());
    }

    private static int version(MultivaluedMap<String, String> typed) {
        String digits = typed.getFirst("version");
        return digits != null && digits.matches("\\d{1,9}") ? Integer.parseInt(digits) : 0;
    }

    private static Response done(Outcome outcome) {
        return Html.goTo("/tickets/" + outcome.number() + "#step");
    }

    private Response refused(Outcome outcome, MultivaluedMap<String, String> typed) {
        boolean kept = !outcome.recorded().isEmpty();
        String words = kept ? "Your answers are recorded. Before the step can be left:" : "Not yet. First:";
        return again(409, outcome.number(), kept ? null : typed, words, outcome.missing(), List.of(), 0);
    }

    /** The page again, with what was typed and what is wrong with it. */
    private Response again(
            int status,
            TicketNumber number,
            @Nullable MultivaluedMap<String, String> typed,
            String words,
            List<Missing> missing,
            List<Invalid.Problem> problems,
            int since) {
        TicketLook.Whole ticket = look.ticket(number, current.actor());
        SheetView view = view(ticket);
        Fill fill = Fill.of(ticket.sheet());
        if (typed != null) {
            fill.typed(typed, problems);
        }
        List<SheetView.Line> fresh = since == 0 ? List.of() : view.since(since);
        return Html.status(status, Templates.sheet(view, fill, new Notice(words, missing, problems, fresh)));
    }

    private SheetView view(TicketLook.Whole ticket) {
        Actor viewer = current.actor();
        JobSheet sheet = ticket.sheet();
        boolean likeness = sheet.latest(LikenessChecked.class).isEmpty();
        String words = sheet.opened().title() + " " + sheet.opened().device();
        return new SheetView(
                ticket,
                viewer,
                current.zone(),
                policy.policy(),
                clock.instant(),
                people.names(),
                people.workers(),
                likeness ? look.alike(words, ticket.number().serial(), viewer) : List.of(),
                diagnoses.of(sheet).map(dated -> new RankingView(sheet, dated)).orElse(null),
                limits.library(),
                seekingKnown(sheet) ? known.of(sheet) : List.of());
    }

    /** Known causes help where the trouble is taken in and where its cause is named; in between the catalogue ranks. */
    private static boolean seekingKnown(JobSheet sheet) {
        return sheet.course().isOpen() && (sheet.step() == Step.IDENTIFY || sheet.step() == Step.DOCUMENT);
    }

    /** The ranking as any version of the catalogue gives it, with all its reasons. */
    @GET
    @Path("ranking")
    @Authenticated
    @Blocking
    public Response ranking(@RestPath String number, @RestQuery @Nullable Integer version) {
        TicketLook.Whole ticket = look.ticket(TicketNumber.parse(number), current.actor());
        RankingView ranking = (version == null ? diagnoses.of(ticket.sheet()) : diagnoses.of(ticket.sheet(), version))
                .map(dated -> new RankingView(ticket.sheet(), dated))
                .orElseThrow(() -> new NotFound("ranking for this category"));
        return Html.ok(Templates.ranking(number, ticket.line().title(), ranking));
    }

    @POST
    @Path("attachments")
    @Authenticated
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Blocking
    public Response attach(
            @RestPath String number,
            @RestForm @Nullable String version,
            @RestForm @Nullable String shows,
            @RestForm("file") @Nullable FileUpload file)
            throws IOException {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        Map<String, List<String>> typed = new HashMap<>();
        typed.put("attachment.shows", List.of(shows == null ? "" : shows));
        try {
            if (file == null || file.size() == 0) {
                throw new Invalid("file", "Choose the file to attach.");
            }
            int seen = version != null && version.matches("\\d{1,9}") ? Integer.parseInt(version) : 0;
            Outcome outcome = acts.attach(
                    ticket,
                    seen,
                    file.fileName(),
                    file.contentType() == null ? "application/octet-stream" : file.contentType(),
                    Files.readAllBytes(file.uploadedFile()),
                    shows == null ? "" : shows,
                    current.actor());
            return outcome.refused() ? refused(outcome, new jakarta.ws.rs.core.MultivaluedHashMap<>()) : done(outcome);
        } catch (Invalid e) {
            List<Invalid.Problem> problems = e.problems().stream()
                    .map(p -> new Invalid.Problem("attachment." + p.field(), p.sentence()))
                    .toList();
            return again(
                    422, ticket, multi(typed), "Nothing was recorded yet. Put this right:", List.of(), problems, 0);
        } catch (Stale e) {
            return again(
                    409,
                    ticket,
                    multi(typed),
                    "Somebody else wrote on this sheet meanwhile: read what is new, then choose the file again.",
                    List.of(),
                    List.of(),
                    0);
        }
    }

    private static MultivaluedMap<String, String> multi(Map<String, List<String>> typed) {
        MultivaluedMap<String, String> map = new jakarta.ws.rs.core.MultivaluedHashMap<>();
        map.putAll(typed);
        return map;
    }

    @GET
    @Path("attachments/{sha256}")
    @Authenticated
    @Blocking
    public Response file(@RestPath String number, @RestPath String sha256) {
        TicketNumber ticket = TicketNumber.parse(number);
        byte[] content = look.file(ticket, sha256, current.actor());
        // always as a download: an attached page must not run as one of ours
        return Response.ok(content, MediaType.APPLICATION_OCTET_STREAM_TYPE)
                .header("Content-Disposition", "attachment; filename=\"" + sha256.substring(0, 12) + "\"")
                .build();
    }

    /** A line of the trail page. */
    public record TrailLine(int entry, String when, String who, String kind, List<FactText.Part> parts, String hash) {}

    @GET
    @Path("trail")
    @Authenticated
    @Blocking
    public Response trail(@RestPath String number) {
        TicketNumber ticket = TicketNumber.parse(number);
        ZoneId zone = current.zone();
        Map<String, String> names = people.names();
        TicketLook.Whole whole = look.ticket(ticket, current.actor());
        List<TrailLine> lines = look.trail(ticket, current.actor()).stream()
                .map(e -> new TrailLine(
                        e.entry(),
                        Times.text(e.at(), zone),
                        names.getOrDefault(e.actor(), e.actor()),
                        e.kind().replace('-', ' '),
                        FactText.parts(e.read().fact(), zone),
                        e.hash()))
                .toList();
        Verification verification = look.verify(ticket, current.actor());
        return Html.ok(Templates.trail(number, whole.line().title(), verification, lines));
    }

    /** One entry, and its fields if it can be put right. */
    public record EntryView(
            String number,
            int entry,
            int version,
            String kind,
            List<FactText.Part> parts,
            String stamp,
            String hash,
            boolean correctable,
            List<Component> components,
            String calculation) {}

    /** A component of the fact as a field: a text, or a yes-or-no. */
    public record Component(String name, String label, boolean yesNo, List<Option> options) {}

    @GET
    @Path("entries/{entry}")
    @Authenticated
    @Blocking
    public Response entry(@RestPath String number, @RestPath int entry) {
        TicketNumber ticket = TicketNumber.parse(number);
        return Html.ok(entryPage(ticket, entry, Map.of(), List.of()));
    }

    @POST
    @Path("entries/{entry}")
    @Authenticated
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response correct(@RestPath String number, @RestPath int entry, MultivaluedMap<String, String> typed) {
        TicketNumber ticket = TicketNumber.parse(number);
        String form = "strike".equals(typed.getFirst("answer")) ? "strike" : "correct";
        typed.putSingle(form + ".entry", Integer.toString(entry));
        typed.putSingle(form + ".reason", String.valueOf(typed.getFirst("reason")));
        try {
            Outcome outcome = perform(ticket, form, typed, version(typed));
            return outcome.refused()
                    ? Html.status(
                            409,
                            entryPage(
                                    ticket,
                                    entry,
                                    typed,
                                    outcome.missing().stream()
                                            .map(m -> new Invalid.Problem("entry", m.sentence()))
                                            .toList()))
                    : done(outcome);
        } catch (Invalid e) {
            return Html.status(422, entryPage(ticket, entry, typed, e.problems()));
        } catch (Stale e) {
            return Html.status(
                    409,
                    entryPage(
                            ticket,
                            entry,
                            typed,
                            List.of(new Invalid.Problem(
                                    "entry", "Somebody else wrote on this sheet meanwhile: look again, then send."))));
        }
    }

    private TemplateInstance entryPage(
            TicketNumber ticket, int entry, Map<String, List<String>> typed, List<Invalid.Problem> problems) {
        TicketLook.Whole whole = look.ticket(ticket, current.actor());
        var stored = look.trail(ticket, current.actor()).stream()
                .filter(e -> e.entry() == entry)
                .findFirst()
                .orElseThrow(() -> new NotFound("entry " + entry + " on ticket " + ticket));
        var standing =
                whole.sheet().facts().stream().filter(n -> n.entry() == entry).findFirst();
        Fact fact = standing.<Fact>map(n -> n.fact()).orElse(stored.read().fact());
        boolean correctable = whole.sheet().course().isOpen()
                && standing.isPresent()
                && SheetView.correctable(fact)
                && current.actor().works();
        Fill fill = Fill.empty();
        fill.put("new", fact);
        fill.typed(typed, problems);
        ZoneId zone = current.zone();
        String stamp =
                people.names().getOrDefault(stored.actor(), stored.actor()) + ", " + Times.text(stored.at(), zone);
        EntryView view = new EntryView(
                ticket.toString(),
                entry,
                whole.sheet().entries(),
                stored.kind().replace('-', ' '),
                FactText.parts(stored.read().fact(), zone),
                stamp,
                stored.hash(),
                correctable,
                components(fact),
                fact instanceof BenchResultAttached attached
                        ? BenchRun.again(attached).address()
                        : "");
        return Templates.entry(view, fill, problems);
    }

    private static List<Component> components(Fact fact) {
        List<Component> components = new ArrayList<>();
        for (var component : fact.getClass().getRecordComponents()) {
            boolean yesNo = component.getType() == boolean.class;
            List<Option> options = component.getName().equals("cautions") ? Choices.ALL.caution() : List.of();
            components.add(new Component(
                    "new." + component.getName(),
                    component.getName().replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(java.util.Locale.ROOT),
                    yesNo,
                    options));
        }
        return components;
    }
}
