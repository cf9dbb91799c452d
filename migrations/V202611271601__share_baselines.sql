-- Limits of the chart of shares, week by week, are frozen beside those of closings: the share, and how much wider than by chance.
alter table chart_baseline add column chart text not null default 'closings' check (chart in ('closings', 'late-weeks'));
alter table chart_baseline drop constraint chart_baseline_points_check;
alter table chart_baseline add constraint chart_baseline_points_check check (points >= case chart when 'closings' then 20 else 12 end);
