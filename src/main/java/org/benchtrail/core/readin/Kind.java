package org.benchtrail.core.readin;

import java.util.Arrays;
import java.util.Optional;

/** What can be read in, each by its published layout. */
public enum Kind {
    NVME_PAGE("nvme-page", "NVMe health log page", "512 bytes of log page 02h, as pairs of hexadecimal digits", true),
    ATA_PAGE(
            "ata-page",
            "ATA attribute sector",
            "512 bytes of attributes, the 512 bytes of thresholds behind them if you have them, as hexadecimal pairs",
            true),
    ATA_ROWS("ata-rows", "ATA attributes, typed", "Lines of: id value worst threshold raw", false),
    REDFISH("redfish", "Redfish Thermal, Power or Sensor", "The JSON of one resource, or a list of them", false),
    UPS_MIB("ups-mib", "UPS-MIB values (RFC 1628)", "Lines such as: upsBatteryVoltage.0 = 274", false),
    SERIES("series", "Series of time and value", "Lines of time and value: tab, semicolon, comma or spaces", false);

    private final String id;
    private final String words;
    private final String hint;
    private final boolean bytes;

    Kind(String id, String words, String hint, boolean bytes) {
        this.id = id;
        this.words = words;
        this.hint = hint;
        this.bytes = bytes;
    }

    /** Stable name in addresses. */
    public String id() {
        return id;
    }

    public String words() {
        return words;
    }

    public String hint() {
        return hint;
    }

    /** Whether it is raw bytes, which a person writes as hexadecimal digits. */
    public boolean isBytes() {
        return bytes;
    }

    public static Optional<Kind> find(String id) {
        return Arrays.stream(values()).filter(k -> k.id.equals(id)).findFirst();
    }
}
