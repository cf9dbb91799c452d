package org.benchtrail.site;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import java.time.LocalDate;
import org.benchtrail.core.method.Category;
import org.jspecify.annotations.Nullable;

/** A device that the site knows by its label. */
@Entity
class Device {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    String label = "";

    @Enumerated(EnumType.STRING)
    Category category = Category.OTHER;

    String model = "";
    String serial = "";

    @ManyToOne
    @JoinColumn(name = "place")
    @Nullable
    PlaceRow place;

    String connection = "";
    String nameplate = "";

    @Nullable
    LocalDate warranty;

    @Enumerated(EnumType.STRING)
    DeviceState state = DeviceState.IN_USE;

    String note = "";
    int version = 1;
}
