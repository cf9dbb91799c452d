package org.benchtrail.site;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.RawString;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.paper.SquareCode;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The devices of the site: their list, the page of one, and labels to print. */
@Path("/")
@Authenticated
public class DevicesPage {
    private static final int PER_PAGE = 50;
    private static final int MOST_LABELS = 100;

    private final DeviceBook book;
    private final DeviceTickets tickets;
    private final SiteBook site;
    private final Directory people;
    private final CurrentActor current;
    private final Clock clock;

    DevicesPage(
            DeviceBook book,
            DeviceTickets tickets,
            SiteBook site,
            Directory people,
            CurrentActor current,
            Clock clock) {
        this.book = book;
        this.tickets = tickets;
        this.site = site;
        this.people = people;
        this.current = current;
        this.clock = clock;
    }

    /** A device as a line of the list. */
    public record Line(String label, String at, String kind, String model, String place, String state) {}

    /** A page of the list; {@code next} is the address of the next one, empty if there is none. */
    public record ListView(List<Line> devices, String words, String next, boolean adding, List<String> places) {}

    /** A ticket of the device. */
    public record TicketLine(String number, String title, boolean open, String state, String opened) {}

    /** A change of the device. */
    public record ChangeLine(String at, String who, String field, String before, String after) {}

    /** A limit of the nameplate in words. */
    public record Limit(String quantity, String words) {}

    /** What the page of a device shows. */
    public record DeviceScreen(
            DeviceView device,
            String at,
            String kind,
            String mains,
            List<Limit> limits,
            String warranty,
            List<TicketLine> tickets,
            List<DeviceReadings> readings,
            List<ChangeLine> changes,
            boolean keeping,
            boolean opening,
            List<String> places) {}

    /** A label to print. */
    public record LabelView(String label, String model, String place, String address, RawString code) {}

    @CheckedTemplate(basePath = "site")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance devices(ListView v, FormValues fill, List<Invalid.Problem> problems);

        static native TemplateInstance device(DeviceScreen v, FormValues fill, List<Invalid.Problem> problems);

        static native TemplateInstance labels(List<LabelView> labels);
    }

    @GET
    @Path("devices")
    @Blocking
    public Response devices(@RestQuery @DefaultValue("") String words, @RestQuery @DefaultValue("") String after) {
        return Html.ok(listed(words.strip(), after.strip(), new FormValues(), List.of()));
    }

    private TemplateInstance listed(String words, String after, FormValues fill, List<Invalid.Problem> problems) {
        DeviceBook.Part part = book.page(words, after, PER_PAGE, current.actor());
        List<Line> lines = part.devices().stream()
                .map(d -> new Line(
                        d.label(),
                        d.at(),
                        Option.words(d.category()),
                        d.model(),
                        d.place(),
                        d.state().words()))
                .toList();
        String next = part.next().isEmpty() ? "" : "/devices?words=" + url(words) + "&after=" + url(part.next());
        return Templates.devices(
                new ListView(lines, words, next, current.may(Permission.ADD_DEVICES), book.placeNames()),
                fill,
                problems);
    }

    @POST
    @Path("devices")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response add(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> Html.goTo(
                        book.add(form.read(DeviceText.class), current.actor()).at()),
                refusal -> listed("", "", new FormValues().typed(form, refusal), refusal.problems()));
    }

    @GET
    @Path("devices/{label}")
    @Blocking
    public Response device(@RestPath String label) {
        DeviceView device = book.device(label, current.actor());
        return Html.ok(shown(device, new FormValues().put("", device.text()), List.of()));
    }

    @POST
    @Path("devices/{label}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response change(@RestPath String label, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> Html.goTo(book.change(label, form.read(DeviceText.class), form.version(), current.actor())
                        .at()),
                refusal -> shown(
                        book.device(label, current.actor()),
                        new FormValues().typed(form, refusal),
                        SitePage.told(refusal)));
    }

    private TemplateInstance shown(DeviceView device, FormValues fill, List<Invalid.Problem> problems) {
        Actor viewer = current.actor();
        ZoneId zone = current.zone();
        List<SiteChanges.Line> history = book.history(device.label(), viewer);
        Map<String, String> names =
                people.names(history.stream().map(SiteChanges.Line::who).collect(Collectors.toSet()));
        DeviceScreen screen = new DeviceScreen(
                device,
                device.at(),
                Option.words(device.category()),
                mains(device),
                device.limits().lines().stream()
                        .map(l -> new Limit(l.quantity(), l.limit().words()))
                        .toList(),
                warranty(device),
                tickets.tickets(device.label(), viewer).stream()
                        .map(t -> new TicketLine(
                                t.number(), t.title(), t.open(), t.state(), Moments.text(t.opened(), zone)))
                        .toList(),
                DeviceReadings.of(tickets.readings(device.label(), viewer), device.limits(), zone),
                history.stream()
                        .map(c -> new ChangeLine(
                                Moments.text(c.at(), zone),
                                names.getOrDefault(c.who(), c.who()),
                                c.field(),
                                c.before(),
                                c.after()))
                        .toList(),
                current.may(Permission.KEEP_SITE),
                current.may(Permission.WORK_TICKETS),
                book.placeNames());
        return Templates.device(screen, fill, problems);
    }

    private String mains(DeviceView device) {
        if (!device.mains().isEmpty()) {
            return device.mains() + " V, at its place";
        }
        String volts = site.rules().mains();
        return volts == null ? "" : volts + " V";
    }

    private String warranty(DeviceView device) {
        LocalDate last = device.warranty();
        if (last == null) {
            return "";
        }
        ZoneId zone = site.rules().calendar().zone();
        return last + (last.isBefore(LocalDate.ofInstant(clock.instant(), zone)) ? ", over" : "");
    }

    /** A sheet of labels: of the devices that are named, or of those that the list showed. */
    @GET
    @Path("device-labels")
    @Blocking
    public Response labels(
            @RestQuery List<String> label,
            @RestQuery @DefaultValue("") String words,
            @RestQuery @DefaultValue("") String after,
            @Context UriInfo asked) {
        List<DeviceView> chosen = label.isEmpty()
                ? book.page(words.strip(), after.strip(), PER_PAGE, current.actor())
                        .devices()
                : book.labelled(label.stream().limit(MOST_LABELS).toList(), current.actor());
        return Html.ok(Templates.labels(chosen.stream()
                .map(d -> {
                    String address = asked.getBaseUri() + "d/" + d.code();
                    return new LabelView(
                            d.label(),
                            d.model(),
                            d.place(),
                            address,
                            SquareCode.tough(address, "QR code with the address of the device"));
                })
                .toList()));
    }

    /** Where the label of a device leads: to its open ticket, or to a new one about it. */
    @GET
    @Path("d/{code}")
    @Blocking
    public Response scanned(@RestPath String code) {
        DeviceView device = book.coded(code, current.actor());
        String next = tickets.tickets(device.label(), current.actor()).stream()
                .filter(DeviceTickets.Ticket::open)
                .findFirst()
                .map(t -> "/tickets/" + t.number())
                .orElseGet(() ->
                        current.may(Permission.WORK_TICKETS) ? "/new-ticket?of=" + device.inAddress() : device.at());
        return Html.goTo(next);
    }

    private static String url(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
