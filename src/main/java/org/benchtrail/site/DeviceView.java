package org.benchtrail.site;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.site.DeviceCode;
import org.benchtrail.core.site.Nameplate;
import org.jspecify.annotations.Nullable;

/**
 * A device as it is shown.
 *
 * @param code what the address on its label ends with
 * @param place empty if it has none
 * @param mains nominal voltage of that place; empty if it is the site's
 * @param version grows with every change
 */
public record DeviceView(
        String code,
        String label,
        Category category,
        String model,
        String serial,
        String place,
        String mains,
        String connection,
        String nameplate,
        @Nullable LocalDate warranty,
        DeviceState state,
        String note,
        int version) {

    static DeviceView of(Device d) {
        PlaceRow place = d.place;
        return new DeviceView(
                DeviceCode.of(d.id == null ? 0 : d.id),
                d.label,
                d.category,
                d.model,
                d.serial,
                place == null ? "" : place.name,
                place == null || place.mains == null ? "" : place.mains,
                d.connection,
                d.nameplate,
                d.warranty,
                d.state,
                d.note,
                d.version);
    }

    /** Address of its page. */
    public String at() {
        return "/devices/" + inAddress();
    }

    /** Its label as part of an address. */
    public String inAddress() {
        return URLEncoder.encode(label, StandardCharsets.UTF_8).replace("+", "%20");
    }

    /** The limits on its nameplate. */
    public Nameplate limits() {
        return Nameplate.parse(nameplate, "nameplate of " + label);
    }

    DeviceText text() {
        return new DeviceText(
                label,
                category,
                model,
                serial,
                place,
                connection,
                nameplate,
                warranty == null ? "" : warranty.toString(),
                state,
                note);
    }
}
