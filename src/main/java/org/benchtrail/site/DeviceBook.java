package org.benchtrail.site;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.site.DeviceCode;
import org.benchtrail.core.site.Nameplate;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.Stale;
import org.jspecify.annotations.Nullable;

/** The devices that the site knows; every change is noted. */
@ApplicationScoped
@Transactional
public class DeviceBook {
    private static final int OFFERED = 200;

    private final Devices devices;
    private final PlaceRows places;
    private final SiteChanges changes;

    DeviceBook(Devices devices, PlaceRows places, SiteChanges changes) {
        this.devices = devices;
        this.places = places;
        this.changes = changes;
    }

    /** @throws Invalid if something typed cannot be taken, or the label is known */
    public DeviceView add(DeviceText typed, Actor actor) {
        Permissions.require(Permission.ADD_DEVICES, actor);
        typed.check();
        if (devices.labelled(typed.label()).isPresent()) {
            throw new Invalid("label", "There is a device with the label " + typed.label() + " already.");
        }
        Device device = new Device();
        device.label = typed.label();
        return keep(device, typed, Map.of(), actor);
    }

    /**
     * Changes all but the label.
     *
     * @throws Stale if somebody changed it meanwhile
     * @throws Invalid if something typed cannot be taken
     */
    public DeviceView change(String label, DeviceText typed, int version, Actor actor) {
        Permissions.require(Permission.KEEP_SITE, actor);
        Device device = present(label);
        if (device.version != version) {
            throw new Stale(device.version);
        }
        typed.check();
        new Invalid.Collector()
                .require(
                        typed.label().equals(device.label),
                        "label",
                        "A label stays: tickets name the device by it. Add another device instead.")
                .throwIfAny();
        return keep(device, typed, fields(device), actor);
    }

    private DeviceView keep(Device device, DeviceText typed, Map<String, String> before, Actor actor) {
        device.place = place(typed.place());
        device.category = Objects.requireNonNull(typed.category());
        device.model = typed.model();
        device.serial = typed.serial();
        device.connection = typed.connection();
        device.nameplate = Nameplate.parse(typed.nameplate(), typed.source()).text();
        device.warranty = typed.warranty().isEmpty() ? null : LocalDate.parse(typed.warranty());
        device.state = typed.state() == null ? DeviceState.IN_USE : typed.state();
        device.note = typed.note();
        device.version += before.isEmpty() ? 0 : 1;
        devices.persistAndFlush(device);
        changes.note(SiteChange.Kind.DEVICE, device.id, before, fields(device), actor);
        return DeviceView.of(device);
    }

    private @Nullable PlaceRow place(String name) {
        return name.isEmpty()
                ? null
                : places.named(name)
                        .orElseThrow(() -> new Invalid(
                                "place", "There is no place of this name. Choose one, or ask a supervisor to add it."));
    }

    private static Map<String, String> fields(Device d) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("label", d.label);
        fields.put("kind of trouble", Option.words(d.category));
        fields.put("model", d.model);
        fields.put("serial number", d.serial);
        fields.put("place", d.place == null ? "" : d.place.name);
        fields.put("connection", d.connection);
        fields.put("nameplate", d.nameplate);
        fields.put("warranty until", d.warranty == null ? "" : d.warranty.toString());
        fields.put("state", d.state.words());
        fields.put("note", d.note);
        return fields;
    }

    public DeviceView device(String label, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return DeviceView.of(present(label));
    }

    List<SiteChanges.Line> history(String label, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return changes.of(SiteChange.Kind.DEVICE, present(label).id);
    }

    private Device present(String label) {
        return devices.labelled(label).orElseThrow(() -> new NotFound("device '" + label + "'"));
    }

    /** Some devices by label, and the label after which there are more. */
    public record Part(List<DeviceView> devices, String next) {}

    public Part page(String words, String after, int most, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        List<DeviceView> found =
                devices.page(words, after, most).stream().map(DeviceView::of).toList();
        return found.size() <= most
                ? new Part(found, "")
                : new Part(found.subList(0, most), found.get(most - 1).label());
    }

    /** Those of these labels that are known. */
    List<DeviceView> labelled(List<String> labels, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return labels.isEmpty()
                ? List.of()
                : devices.ofLabels(labels).stream().map(DeviceView::of).toList();
    }

    /** The device whose label carries that code. */
    DeviceView coded(String code, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        OptionalInt number = DeviceCode.read(code);
        return number.stream()
                .boxed()
                .flatMap(n -> devices.findByIdOptional((long) n).stream())
                .findFirst()
                .map(DeviceView::of)
                .orElseThrow(() -> new NotFound("device with the code '" + code + "'"));
    }

    /** Labels to choose from when a ticket is opened; at most 200. */
    public List<String> labels() {
        return devices
                .find("state <> ?1 order by lower(label)", DeviceState.GIVEN_UP)
                .range(0, OFFERED - 1)
                .<Device>list()
                .stream()
                .map(d -> d.label)
                .toList();
    }

    /** Names of places to choose from. */
    public List<String> placeNames() {
        return places.all().stream().filter(p -> !p.closed).map(p -> p.name).toList();
    }

    /** The device that is meant by a name that somebody typed; empty if none is known by it. */
    public Optional<DeviceView> known(String name) {
        return devices.labelled(name).map(DeviceView::of);
    }

    /** The nominal voltage where a device is, else at the place that a ticket names; empty if both are unknown or have the site's. */
    public Optional<String> mains(String device, String place) {
        return devices.mains(device, place);
    }
}
