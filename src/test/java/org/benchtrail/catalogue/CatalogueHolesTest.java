package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Troubles that an earlier catalogue could not name: the delivered one puts each first, but for one that may come second. */
class CatalogueHolesTest {
    private static final Catalogue DELIVERED = CatalogueFile.delivered();

    /** Findings with their values; what was told, not seen, has a question mark behind it. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            power | p1=no p19=yes p22=yes? | power/part-not-seated | 1
            power | p1=no p19=yes p23=yes? p20=yes | power/board-plug-loose | 1
            power | p1=no p26=yes | power/redundant-supply-lost | 1
            storage | s5=yes s6=yes | storage/drive-dead | 1
            storage | s6=yes s18=yes? | storage/drive-not-seated | 2
            boot | o3=yes o25=yes? o19=yes o2=no | boot/storage-mode-changed | 1
            print | r14=yes r8=yes r2=no | print/wrong-default-printer | 1
            print | r15=yes r2=yes | print/wrong-tray-or-size | 1
            print | r17=yes r1=yes r20=yes? | print/usb-cable | 1
            wifi | w15=yes w2=no | wifi/uplink-down | 1
            wifi | w9=no w16=yes | wifi/name-server | 1
            wifi | w15=yes w17=yes | wifi/sign-in-page | 1
            wifi | w2=yes w18=yes | wifi/proxy-or-vpn | 1
            wired | n1=no n3=yes n6=no n22=yes? | wired/wrong-virtual-network | 1
            wired | n1=no n17=yes n22=yes? | wired/blocked-by-loop-protection | 1
            wired | n18=yes n14=above n25=yes? | wired/feeding-power-short | 1
            display | d15=yes d14=no d1=yes | display/projection-mode | 1
            usb | u14=wireless u10=yes | usb/wireless-battery-flat | 1
            usb | u14=wireless u10=no | usb/pairing-lost | 1
            usb | u14=sound u12=yes | usb/other-sound-output | 1
            usb | u14=camera u13=yes | usb/shutter-or-privacy | 1
            boot | o27=yes o20=yes o12=above? | boot/profile-damaged | 1
            boot | o27=yes o21=yes | boot/account-locked | 1
            boot | o22=yes | boot/updates-stuck | 1
            wired | n1=no n3=yes n6=yes | wired/address-server | 1
            """)
    void whatIsKnown_putsTheRightCauseFirst(String category, String known, String cause, int place) {
        Ranking ranking = Ranking.of(model(category), new Evidence(reports(known), List.of()));
        List<String> causes = ranking.all().stream()
                .map(Ranking.Ranked::cause)
                .filter(id -> !id.equals(Model.UNLISTED))
                .toList();
        assertTrue(causes.indexOf(cause) < place, () -> cause + " is not among " + causes.subList(0, place));
    }

    private static Model model(String category) {
        return DELIVERED.categories().stream()
                .filter(c -> c.id().equals(category))
                .map(c -> new Model(c, ModelSettings.STANDARD))
                .findFirst()
                .orElseThrow();
    }

    private static List<Report> reports(String known) {
        List<Report> reports = new ArrayList<>();
        for (String one : known.split(" ")) {
            String[] part = one.replace("?", "").split("=");
            Source source = one.endsWith("?") ? Source.REPORTED : Source.SEEN;
            reports.add(
                    Report.of("r" + reports.size(), part[0], part[1], source, Instant.parse("2031-03-03T08:00:00Z")));
        }
        return reports;
    }
}
