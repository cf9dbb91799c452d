package org.benchtrail.site;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** The rows of devices. */
@Startup
@ApplicationScoped
class Devices implements PanacheRepository<Device> {
    private static final String WITH_PLACE = "from Device d left join fetch d.place ";

    private final SqlText sql = SqlText.of(Devices.class);

    Optional<Device> labelled(String label) {
        return PlainText.isText(label)
                ? find(WITH_PLACE + "where lower(d.label) = ?1", label.strip().toLowerCase(Locale.ROOT))
                        .firstResultOptional()
                : Optional.empty();
    }

    /** Those whose label, model, serial number or place hold the words, by label, after {@code after}; with one more than {@code most}. */
    List<Device> page(String words, String after, int most) {
        String like = "%" + words.toLowerCase(Locale.ROOT).replaceAll("([!%_])", "!$1") + "%";
        return find(
                        WITH_PLACE
                                + "where lower(d.label) > ?1 and (lower(d.label) like ?2 escape '!' or lower(d.model)"
                                + " like ?2 escape '!' or lower(d.serial) like ?2 escape '!' or lower(d.place.name)"
                                + " like ?2 escape '!') order by lower(d.label)",
                        after.toLowerCase(Locale.ROOT),
                        like)
                .range(0, most)
                .list();
    }

    /** The nominal voltage at the place of a device, else at the place of that name; empty if neither says one. */
    Optional<String> mains(String device, String place) {
        String found = Sql.of(getEntityManager(), sql.statement("mains"))
                .with("device", device.toLowerCase(Locale.ROOT))
                .with("place", place.toLowerCase(Locale.ROOT))
                .value(String.class);
        return Optional.of(found).filter(volts -> !volts.isEmpty());
    }

    List<Device> ofLabels(List<String> labels) {
        return find(
                        WITH_PLACE + "where lower(d.label) in ?1 order by lower(d.label)",
                        labels.stream().map(l -> l.toLowerCase(Locale.ROOT)).toList())
                .list();
    }
}
