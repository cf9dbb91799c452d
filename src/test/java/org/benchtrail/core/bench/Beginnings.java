package org.benchtrail.core.bench;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.bench.storage.DriveHealth.Form;

/** Where a walk begins: at the example, and at inputs of another kind that no single change of the example leads to. */
final class Beginnings {
    private Beginnings() {}

    private static final Map<String, List<Record>> MORE = Map.of(
            "drive-health",
            List.of(
                    page(0, 0),
                    page(1, 0x66),
                    page(192, 1),
                    page(196, 1),
                    rows("199 200 200 0 1"),
                    rows("188 100 100 0 4295032833"),
                    rows("199 200 200 0 1\n188 100 100 0 4295032833\n5 100 100 10 0")));

    static List<Object> of(Calculation<?> calculation) {
        List<Object> beginnings = new ArrayList<>();
        beginnings.add(calculation.example());
        beginnings.addAll(MORE.getOrDefault(calculation.id(), List.of()));
        return beginnings;
    }

    /** A health log page of a drive at 37 °C with all its spare, with another byte at one place. */
    private static DriveHealth.Input page(int at, int value) {
        byte[] page = new byte[512];
        page[1] = 0x36;
        page[2] = 0x01;
        page[3] = 100;
        page[4] = 10;
        page[128] = 10;
        page[at] = (byte) value;
        return new DriveHealth.Input(Form.NVME_PAGE, HexFormat.of().formatHex(page), "", 0, List.of(), null);
    }

    private static DriveHealth.Input rows(String rows) {
        return new DriveHealth.Input(Form.ATA_ROWS, rows, "", 5, List.of(), null);
    }
}
