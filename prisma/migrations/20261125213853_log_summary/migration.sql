-- AlterTable
ALTER TABLE "job_fact" DROP COLUMN "median_indoor_dew_point_f",
ADD COLUMN     "mean_indoor_dew_point_f" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "log_import" ADD COLUMN     "summary" JSONB;
